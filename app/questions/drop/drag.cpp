#include "questions/drop/drag.hpp"

#include "questions/drop/low_speed.hpp"

#include <cmath>
#include <numbers>

namespace pourbook {

std::vector<DragPoint> drag_points(const DropResult& r, double from, double to, int points, std::size_t samples,
                                   std::uint64_t seed) {
    Draws draws(samples, seed);
    const auto variations = r.model->variations(draws);
    const auto conductivities = r.tube.conductivities(draws);
    const eddy::FallSetup nominal = r.model->setup(r.tube.conductivity_S_m());
    std::vector<DragPoint> out;
    for (int i = 0; i < points; ++i) {
        const double speed = from * std::pow(to / from, static_cast<double>(i) / (points - 1));
        std::vector<double> forces;
        for (std::size_t s = 0; s < samples; ++s)
            forces.push_back(r.model->setup(conductivities[s], variations[s]).drag_N(speed));
        out.push_back({speed, nominal.drag_N(speed), quantile(forces, 0.05), quantile(forces, 0.95)});
    }
    return out;
}

Result<DragResult> drag(const Catalogue& catalogue, const DragRequest& request) {
    if (!(request.speed_m_s >= 0) || request.speed_m_s > 1e5)
        return Problem{Problem::Kind::unreadable, "--speed: a speed from 0 to 100000 m/s is expected", 0};
    Result<DropSetup> setup = drop_setup(catalogue, request.drop.setup);
    if (!setup) return setup.problem();
    Result<TubeMetal> tube =
        tube_metal(catalogue, request.drop.metal, request.drop.resistivity, request.drop.conditions);
    if (!tube) return tube.problem();
    const eddy::DropModel model(setup->inputs);
    const eddy::FallSetup s = model.setup(tube->conductivity_S_m());
    if (auto fault = low_speed_fault(model, tube->conductivity_S_m(), request.speed_m_s)) return *fault;
    DragResult r;
    r.conditions = request.drop.conditions;
    r.speed_m_s = request.speed_m_s;
    // The integral itself: one value needs no table.
    r.drag_N = s.force_scale_N * model.curve().drag().force(s.u_per_speed * r.speed_m_s);
    r.linear_drag_N = s.coefficient_N_s_m() * r.speed_m_s;
    r.peak_drag_N = s.force_scale_N * model.curve().peak().force;
    r.peak_drag_speed_m_s = model.curve().peak().u / s.u_per_speed;
    if (model.nominal().drag != 1) r.peak_drag_N = r.peak_drag_speed_m_s = no_number;
    const double frequency = 0.3 * r.speed_m_s / model.inputs().bore_radius_m.value;
    r.skin_depth_m =
        frequency > 0
            ? std::sqrt(1 / (std::numbers::pi * frequency * eddy::vacuum_permeability * tube->conductivity_S_m()))
            : no_number;
    Draws draws(request.drop.samples, request.drop.seed);
    const auto variations = model.variations(draws);
    const auto conductivities = tube->conductivities(draws);
    std::vector<double> forces;
    for (std::size_t i = 0; i < variations.size(); ++i)
        forces.push_back(model.setup(conductivities[i], variations[i]).drag_N(r.speed_m_s));
    r.drag_low90_N = quantile(forces, 0.05);
    r.drag_high90_N = quantile(forces, 0.95);
    r.setup = std::move(*setup);
    r.tube = std::move(*tube);
    return r;
}

} // namespace pourbook

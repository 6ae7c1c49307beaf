#include "questions/drop/drop.hpp"

#include "core/eddy/fall_times.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/low_speed.hpp"
#include "questions/metals/find_metal.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

void sample(DropResult& r, std::size_t samples, std::uint64_t seed) {
    Draws draws(samples, seed);
    const auto variations = r.model->variations(draws);
    const auto conductivities = r.tube.conductivities(draws);
    std::vector<double> times = eddy::fall_times_s(*r.model, conductivities, variations), speeds;
    for (std::size_t i = 0; i < samples; ++i) {
        const eddy::FallSetup s = r.model->setup(conductivities[i], variations[i]);
        if (const auto u = s.curve->stable_balance(s.mass_kg * s.gravity_m_s2 / s.force_scale_N))
            speeds.push_back(*u / s.u_per_speed);
    }
    r.fall_time_low90_s = std::min(quantile(times, 0.05), r.fall.time_s);
    r.fall_time_high90_s = std::max(quantile(times, 0.95), r.fall.time_s);
    if (speeds.size() < samples) return;
    r.speed_low90_m_s = quantile(speeds, 0.05);
    r.speed_high90_m_s = quantile(speeds, 0.95);
}

void weigh_tube(DropResult& r, const Catalogue& catalogue) {
    if (!r.tube.metal) return;
    const auto density = tube_density(catalogue, *r.tube.metal, r.conditions);
    if (!density) return;
    r.tube_mass_kg = density->value_si * r.model->nominal().wall_area_m2 * r.model->nominal().tube_length_m;
    const auto heat = evaluate(catalogue, *r.tube.metal, "specific_heat", r.conditions);
    if (heat) r.warming_K = r.fall.heat_J / (r.tube_mass_kg * heat->value_si);
    Conditions room = r.conditions;
    room.temperature_K = room_temperature_K;
    if (const auto price = evaluate(catalogue, *r.tube.metal, "price", room))
        r.cost_usd = r.tube_mass_kg * price->value_si;
}

double relative_at_terminal(const DropResult& r) {
    if (!r.fall.terminal_speed_m_s) return 0;
    return r.model->curve().relative(r.model->setup(r.tube.conductivity_S_m()).u_per_speed *
                                     *r.fall.terminal_speed_m_s);
}

std::string regime_of(const DropResult& r) {
    if (!r.fall.terminal_speed_m_s) return "no terminal speed: the peak drag is below the magnet's weight";
    const double speed = *r.fall.terminal_speed_m_s;
    const double settle_m = 5 * speed * r.time_constant_s;
    if (settle_m > r.model->nominal().tube_length_m) return "the tube is too short to reach the terminal speed";
    const double relative = relative_at_terminal(r);
    if (relative > 0.99) return "linear: drag grows with speed";
    return "induced field matters: drag is " + significant(100 * (1 - relative), 2) + " % below the linear law";
}

double lost_at_ends(const eddy::EndEffect& ends) {
    double lost = 0;
    constexpr int steps = 400;
    const double step = 2 * ends.reach_m() / steps;
    for (int i = 0; i < steps; ++i) lost += 2 * step * (1 - ends.share((i + 0.5) * step));
    return lost;
}

std::vector<std::string> left_out(const DropResult& r) {
    const eddy::DropInputs& i = r.setup.inputs;
    const double a = i.bore_radius_m.value, gap = a - i.outer_radius_m.value;
    std::vector<std::string> out;
    if (i.slits > 0)
        out.push_back("slits: the currents of a thin wall, closing around narrow slits; this wall is " +
                      significant(100 * (i.outside_radius_m.value - a) / a, 2) +
                      " % of the bore radius thick, and what closes across its thickness is left out (the drag is at "
                      "least this, at most that of the whole tube, " +
                      significant(1 / r.path_factor, 3) + " times as much)");
    if (i.off_axis_m == 0)
        out.push_back("off-axis travel: more drag, about 5 (d/a)^2 for a small magnet; at most " +
                      significant(510 * gap * gap / (a * a), 2) + " % if it rides " + significant(gap * 1000, 2) +
                      " mm off the axis; rubbing and tilt are not included");
    if (i.off_axis_m > 0)
        out.push_back("off-axis travel: a steady distance from the axis, in a thin wall at its mean radius; rubbing, "
                      "tilt and the way there are not included");
    const double relative = r.fall.terminal_speed_m_s ? relative_at_terminal(r) : 0.5;
    out.push_back("ends: counted as missing rings (exact at low speed); the currents' own field there changes the time "
                  "by less than " +
                  significant(std::max(0.01, 100 * (1 - relative) * 2 * a / r.model->nominal().tube_length_m), 1) +
                  " %");
    out.push_back("air drag: negligible unless the magnet fits like a piston");
    return out;
}

/// Slits and off-axis travel change the drag by a factor that is known at low speed only.
Result<DropResult> within_low_speed(DropResult r) {
    if (r.path_factor == 1) return r;
    if (auto fault = low_speed_fault(*r.model, r.tube.conductivity_S_m(), r.fall.terminal_speed_m_s)) return *fault;
    r.peak_drag_N = r.peak_drag_speed_m_s = no_number;
    r.fall.unstable_speed_m_s.reset();
    return r;
}

DropResult worked_out(const Catalogue& catalogue, const DropRequest& request, DropSetup setup,
                      std::shared_ptr<const eddy::DropModel> model, TubeMetal tube) {
    DropResult r;
    r.setup = std::move(setup);
    r.tube = std::move(tube);
    r.conditions = request.conditions;
    r.model = std::move(model);
    const eddy::FallSetup s = r.model->setup(r.tube.conductivity_S_m());
    r.fall = r.model->fall(s, true);
    r.moment_A_m2 = r.model->moment_A_m2();
    r.magnet_mass_kg = r.model->mass_kg();
    r.coefficient_N_s_m = s.coefficient_N_s_m();
    r.peak_drag_N = s.force_scale_N * r.model->curve().peak().force;
    r.peak_drag_speed_m_s = r.model->curve().peak().u / s.u_per_speed;
    r.time_constant_s = s.mass_kg / r.coefficient_N_s_m;
    r.free_fall_time_s = std::sqrt(2 * s.tube_length_m / s.gravity_m_s2);
    r.effective_length_m = s.tube_length_m - lost_at_ends(r.model->ends());
    r.felt_N = r.fall.terminal_speed_m_s ? s.mass_kg * s.gravity_m_s2 : r.peak_drag_N;
    r.path_factor = r.model->nominal().drag;
    sample(r, request.samples, request.seed);
    weigh_tube(r, catalogue);
    r.regime = regime_of(r);
    r.left_out = left_out(r);
    return r;
}

Result<DropResult> answered(const Catalogue& catalogue, const DropRequest& request, DropSetup setup,
                            std::shared_ptr<const eddy::DropModel> model, TubeMetal tube) {
    DropResult r = worked_out(catalogue, request, std::move(setup), std::move(model), std::move(tube));
    if (!r.fall.fault.empty()) return Problem{Problem::Kind::refused, r.fall.fault, 0};
    return within_low_speed(std::move(r));
}

} // namespace

Result<DropResult> drop(const Catalogue& catalogue, const DropRequest& request) {
    Result<DropSetup> setup = drop_setup(catalogue, request.setup);
    if (!setup) return setup.problem();
    Result<TubeMetal> tube = tube_metal(catalogue, request.metal, request.resistivity, request.conditions);
    if (!tube) return tube.problem();
    auto model = std::make_shared<const eddy::DropModel>(setup->inputs);
    return answered(catalogue, request, std::move(*setup), std::move(model), std::move(*tube));
}

Result<std::vector<DropOfMetal>> drop_in_each(const Catalogue& catalogue, const DropRequest& request,
                                              const std::vector<std::string>& metals) {
    const Result<DropSetup> setup = drop_setup(catalogue, request.setup);
    if (!setup) return setup.problem();
    const auto model = std::make_shared<const eddy::DropModel>(setup->inputs);
    std::vector<DropOfMetal> out;
    for (const std::string& word : metals) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        Result<TubeMetal> tube = tube_metal(catalogue, **metal, request.conditions);
        DropOfMetal& made = out.emplace_back(DropOfMetal{*metal, tube ? Problem{} : tube.problem()});
        if (tube) made.result = answered(catalogue, request, *setup, model, std::move(*tube));
    }
    return out;
}

} // namespace pourbook

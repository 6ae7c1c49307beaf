#include "questions/drop/drop.hpp"

#include "core/eddy/fall_times.hpp"
#include "core/eddy/turned_ball.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/low_speed.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/say/amounts.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

void sample(DropResult& r, std::size_t samples, std::uint64_t seed) {
    Draws draws(samples, seed);
    const auto variations = r.model->variations(draws);
    const auto conductivities = drawn_conductivities(r, draws);
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

double volume_of(const eddy::DropInputs& i, std::size_t piece) {
    double sum = 0;
    for (const auto& [bore, from_m, to_m, conductivity, of] : i.wall)
        if (of == piece)
            sum += std::numbers::pi * (to_m - from_m) *
                   (bore.outer_radius_m * bore.outer_radius_m - bore.inner_radius_m * bore.inner_radius_m);
    return sum;
}

/// Of all of the same metal; what is not known of one is not known of the sum.
void weigh_piece(DropResult& r, const Catalogue& catalogue, const TubeMetal& of, double volume_m3) {
    const auto value = [&](const char* property, const Conditions& conditions) {
        const auto e = of.metal ? evaluate(catalogue, *of.metal, property, conditions) : Result<Evaluated>(Problem{});
        return e ? e->value_si : no_number;
    };
    const auto density = of.metal ? tube_density(catalogue, *of.metal, r.conditions) : Result<Evaluated>(Problem{});
    const double mass = density ? density->value_si * volume_m3 : no_number;
    Conditions room = r.conditions;
    room.temperature_K = room_temperature_K;
    r.tube_mass_kg += mass;
    r.warming_K += mass * value("specific_heat", r.conditions); // J/K, for the moment
    r.cost_usd += mass * value("price", room);
}

void weigh_tube(DropResult& r, const Catalogue& catalogue) {
    const eddy::DropInputs& i = r.setup.inputs;
    r.tube_mass_kg = r.warming_K = r.cost_usd = 0;
    const bool single = i.wall.empty();
    weigh_piece(r, catalogue, r.tube,
                single ? r.model->nominal().wall_area_m2 * r.model->nominal().tube_length_m : volume_of(i, 0));
    for (const WallPiece& p : r.pieces) weigh_piece(r, catalogue, p.metal, volume_of(i, p.outline.piece));
    r.warming_K = r.fall.heat_J / r.warming_K;
}

double relative_at_terminal(const DropResult& r) {
    if (!r.fall.terminal_speed_m_s) return 0;
    return r.model->curve().relative(r.model->setup(r.tube.conductivity_S_m()).u_per_speed *
                                     *r.fall.terminal_speed_m_s);
}

bool even(const DropResult& r) {
    return !r.model->wall() || r.model->wall()->even();
}

/// Whether the magnet keeps near its terminal speed over half a bore radius.
bool settles(const DropResult& r) {
    if (!r.fall.terminal_speed_m_s || !even(r)) return false;
    constexpr double near = 0.02;
    const double wanted = r.setup.inputs.bore_radius_m.value / 2;
    double from = no_number, longest = 0;
    for (const eddy::Instant& i : r.fall.path) {
        const bool close = std::abs(i.speed_m_s / *r.fall.terminal_speed_m_s - 1) < near;
        if (!close) from = no_number;
        if (close && std::isnan(from)) from = i.depth_m;
        if (close) longest = std::max(longest, i.depth_m - from);
    }
    return longest > wanted;
}

std::string regime_of(const DropResult& r) {
    if (!even(r)) return "the wall differs along the tube: no one terminal speed";
    if (!r.fall.terminal_speed_m_s) return "no terminal speed: the peak drag is below the magnet's weight";
    if (!r.settles) return "the tube is too short to reach the terminal speed";
    if (r.fall.turns_back)
        return "bounces: the wall's currents outlive the magnet's own time, and throw it back at first";
    const double relative = relative_at_terminal(r);
    if (relative > 0.99) return "linear: drag grows with speed";
    return "induced field matters: drag is " + significant(100 * (1 - relative), 2) + " % below the linear law";
}

/// Length of a tube without ends that would brake as much.
double effective_length(const eddy::FallSetup& s) {
    constexpr int steps = 800;
    const double step = s.tube_length_m / steps;
    double sum = 0;
    for (int i = 0; i < steps; ++i) sum += step * s.share((i + 0.5) * step);
    return s.wall ? sum : std::min(sum, s.tube_length_m);
}

double most_drag(const eddy::Fall& f) {
    double most = 0;
    for (const eddy::Instant& i : f.path) most = std::max(most, i.drag_N);
    return most;
}

std::string off_axis_words(const eddy::DropInputs& i) {
    if (i.off_axis_m > 0)
        return "off-axis travel: a steady distance from the axis, summed over shells of the wall; rubbing, tilt and "
               "the "
               "way there are not included";
    if (i.slits.count > 0) return "off-axis travel, rubbing and tilt are not included";
    return "off-axis travel only adds drag: at most " + significant(100 * (i.riding.full - 1), 2) + " % if it rides " +
           significant(i.riding.furthest_m * 1000, 2) +
           " mm off the axis; every distance up to that is in the interval alike, the time itself is that on the axis; "
           "rubbing and tilt are not included";
}

std::string currents_words(const DropResult& r) {
    if (r.fall.currents_s)
        return "nothing of the ends: the wall's currents were followed in time, which changes the fall by " +
               significant(*r.fall.currents_s * 1000, 2) + " ms against currents that follow at once";
    return "ends: counted as missing rings (exact at low speed); that the wall's currents need " +
           significant(r.fading_s * 1000, 2) + " ms to fade changes the time by less than " +
           significant(std::max(0.01, 200 * r.fading_s / r.fall.time_s), 1) + " %";
}

std::string slit_words(const DropResult& r) {
    const eddy::DropInputs& i = r.setup.inputs;
    const double a = i.bore_radius_m.value;
    std::string out = "slits: the currents of a thin wall, closing around them";
    if (std::isfinite(i.slits.seam_m))
        out += " or through the seam, which resists as " + significant(i.slits.seam_m * 1000, 3) +
               " mm of the wall's metal";
    out += "; this wall is " + significant(100 * (i.outside_radius_m.value - a) / a, 2) +
           " % of the bore radius thick, and what closes across its thickness is left out (the drag is at least this, "
           "at most that of the whole tube";
    if (i.slit_length_m > 0)
        return out + "); near the slits' end it goes over from one to the other, as though they were 0.15 to 0.35 wall "
                     "radii shorter, which is in the interval";
    return out + ", " + significant(1 / r.path_factor, 3) + " times as much)";
}

std::vector<std::string> left_out(const DropResult& r) {
    const eddy::DropInputs& i = r.setup.inputs;
    std::vector<std::string> out;
    if (i.slits.count > 0) out.push_back(slit_words(r));
    if (!r.pieces.empty() || !i.wall.empty())
        out.push_back(
            "parts of the wall: each brakes by itself at low speed, joints and gaps being of no matter; a joint "
            "between two tubes is taken as closed, and liner and sleeve as long as the tube");
    out.push_back(off_axis_words(i));
    out.push_back(currents_words(r));
    out.push_back("air drag: negligible unless the magnet fits like a piston");
    return out;
}

std::vector<std::string> cautions(const DropResult& r) {
    constexpr double warm_K = 353, cold_K = 250;
    std::vector<std::string> out = r.setup.cautions;
    const double t = r.conditions.temperature_K;
    if ((t > warm_K || t < cold_K) && std::abs(r.setup.magnet_temperature_K - room_temperature_K) < 1)
        out.push_back("the tube is at " + temperature_text(t, UnitSystem::shown) +
                      " and the magnet taken at 20 degC: on its way it takes on some of the tube's temperature" +
                      (t > warm_K ? ", and a magnet above its working temperature is spoilt for good" : "") +
                      ": --magnet-at");
    if (std::isfinite(r.fall_time_across_s))
        out.push_back("a ball is free to turn: with its poles across the tube it falls in " +
                      significant(r.fall_time_across_s, 3) +
                      " s instead. Mark a pole with paint and film the fall from below to tell which");
    return out;
}

/// A ball turned across the tube: low-speed drag in the ratio of turned_ball.hpp.
double time_across(const DropResult& r) {
    if (r.setup.inputs.shape != eddy::Shape::sphere || r.setup.inputs.stack.pieces > 1 || r.path_factor != 1)
        return no_number;
    eddy::Variation across = r.model->nominal();
    across.drag *= eddy::across_over_along(r.setup.inputs.bore());
    return r.model->fall(r.model->setup(r.tube.conductivity_S_m(), across)).time_s;
}

/// Slits and off-axis travel change the drag by a factor that is known at low speed only, and so are the parts of a
/// wall where currents are not followed.
Result<DropResult> within_low_speed(DropResult r) {
    if (r.model->wall() && !r.fall.currents_s) {
        const double mean_m_s = (r.model->nominal().tube_length_m) / r.fall.time_s;
        if (auto fault = low_speed_fault(r.model->setup(r.tube.conductivity_S_m()), mean_m_s)) return *fault;
    }
    if (r.model->wall()) {
        r.peak_drag_N = r.peak_drag_speed_m_s = no_number;
        r.fall.unstable_speed_m_s.reset();
    }
    if (r.path_factor == 1) return r;
    if (auto fault = low_speed_fault(*r.model, r.tube.conductivity_S_m(), r.fall.terminal_speed_m_s)) return *fault;
    r.peak_drag_N = r.peak_drag_speed_m_s = no_number;
    r.fall.unstable_speed_m_s.reset();
    return r;
}

DropResult worked_out(const Catalogue& catalogue, const DropRequest& request, DropSetup setup,
                      std::shared_ptr<const eddy::DropModel> model, TubeMetal tube, std::vector<WallPiece> pieces) {
    DropResult r;
    r.pieces = std::move(pieces);
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
    r.free_fall_time_s = s.free_fall_time_s();
    r.effective_length_m = effective_length(s);
    r.fading_s = eddy::fading_time_s(s);
    r.settles = settles(r);
    r.felt_N = r.settles ? s.mass_kg * s.gravity_m_s2 : most_drag(r.fall);
    r.path_factor = r.model->nominal().drag;
    sample(r, request.samples, request.seed);
    weigh_tube(r, catalogue);
    r.regime = regime_of(r);
    r.fall_time_across_s = time_across(r);
    r.left_out = left_out(r);
    r.cautions = cautions(r);
    return r;
}

Result<DropResult> answered(const Catalogue& catalogue, const DropRequest& request, DropSetup setup,
                            std::shared_ptr<const eddy::DropModel> model, TubeMetal tube,
                            std::vector<WallPiece> pieces = {}) {
    DropResult r =
        worked_out(catalogue, request, std::move(setup), std::move(model), std::move(tube), std::move(pieces));
    if (!r.fall.fault.empty()) return Problem{Problem::Kind::refused, r.fall.fault, 0};
    return within_low_speed(std::move(r));
}

/// Each with a wall of its own: its parts conduct in another proportion to every metal of the tube.
Result<std::vector<DropOfMetal>> walls_in_each(const Catalogue& catalogue, DropRequest request,
                                               const std::vector<std::string>& metals) {
    std::vector<DropOfMetal> out;
    request.resistivity.clear();
    for (const std::string& word : metals) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        request.metal = word;
        out.push_back({*metal, drop(catalogue, request)});
    }
    return out;
}

} // namespace

std::vector<double> drawn_conductivities(const DropResult& r, Draws& draws) {
    if (r.pieces.empty()) return r.tube.conductivities(draws);
    const eddy::DropInputs& i = r.setup.inputs;
    const double from = i.from_depth_m, to = i.tube_length_m.value + i.beyond_m;
    return conductivities_together(r.tube, r.pieces, r.model->wall()->weights(from, to), draws);
}

Result<DropSetup> whole_setup(const Catalogue& catalogue, const DropRequest& request, const Result<TubeMetal>& tube,
                              std::vector<WallPiece>& pieces) {
    return drop_setup(catalogue, request.setup, [&](DropSetup read) -> Result<DropSetup> {
        if (!tube) return tube.problem();
        return with_wall(std::move(read), request.wall, *tube, catalogue, request.conditions, pieces);
    });
}

Result<DropResult> drop(const Catalogue& catalogue, const DropRequest& request) {
    Result<TubeMetal> tube = tube_metal(catalogue, request.metal, request.resistivity, request.conditions);
    std::vector<WallPiece> pieces;
    Result<DropSetup> setup = whole_setup(catalogue, request, tube, pieces);
    if (!setup) return setup.problem();
    auto model = std::make_shared<const eddy::DropModel>(setup->inputs);
    return answered(catalogue, request, std::move(*setup), std::move(model), std::move(*tube), std::move(pieces));
}

Result<std::vector<DropOfMetal>> drop_in_each(const Catalogue& catalogue, const DropRequest& request,
                                              const std::vector<std::string>& metals) {
    if (request.wall != WallWords{}) return walls_in_each(catalogue, request, metals);
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

#include "core/eddy/drop_model.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

namespace pourbook::eddy {
namespace {

constexpr double no_wall = 1e-3; // of the wall, where its limits leave none

double probability_below(double draw) {
    return 0.5 * std::erfc(-draw / std::numbers::sqrt2);
}

double mass_of(const DropInputs& i) {
    return i.mass_kg.value > 0 ? i.mass_kg.value : i.density_kg_m3.value * i.magnet().volume_m3();
}

double wall_area(double bore_radius, double outside_radius) {
    return std::numbers::pi * (outside_radius * outside_radius - bore_radius * bore_radius);
}

double wall_m(const DropInputs& i) {
    return i.outside_radius_m.value - i.bore_radius_m.value;
}

double mean_radius(const DropInputs& i) {
    return (i.bore_radius_m.value + i.outside_radius_m.value) / 2;
}

Problem refused(std::string text) {
    return {Problem::Kind::refused, std::move(text), 0};
}

/// Sizes that nobody pours or that a missing unit makes, and tolerances that reach to nothing.
std::optional<Problem> size_fault(const DropInputs& i) {
    constexpr double smallest_m = 0.05e-3, largest_m = 1, longest_m = 100, widest = 1.0 / 3;
    struct Named {
        const char* name;
        Uncertain value;
        double least, most;
    };
    const Named all[] = {{"the magnet's diameter", i.outer_radius_m, smallest_m, largest_m},
                         {"the magnet's length", i.length_m, 0, longest_m},
                         {"the ring's hole", i.inner_radius_m, 0, largest_m},
                         {"the bore", i.bore_radius_m, smallest_m, largest_m},
                         {"the tube's outside diameter", i.outside_radius_m, smallest_m, 10 * largest_m},
                         {"the tube's length", i.tube_length_m, 2 * smallest_m, longest_m},
                         {"the remanence", i.remanence_T, 0, INFINITY},
                         {"the magnet's mass", i.mass_kg, 0, INFINITY}};
    for (const Named& n : all) {
        if (!(n.value.value >= n.least && n.value.value <= n.most))
            return refused(std::string(n.name) +
                           " is outside the model, which knows diameters from 0.1 mm to 2 m and tubes up to 100 m: is "
                           "its unit right?");
        if (n.value.spread > widest * n.value.value)
            return refused(std::string(n.name) + " has a tolerance of more than a third of itself: measure it better");
    }
    return std::nullopt;
}

} // namespace

double Uncertain::at(double draw) const {
    return value + spread * (limits ? 2 * probability_below(draw) - 1 : draw);
}

double Uncertain::standard() const {
    return limits ? spread / std::numbers::sqrt3 : spread;
}

Magnet DropInputs::magnet() const {
    return {shape, outer_radius_m.value, shape == Shape::ring ? inner_radius_m.value : 0,
            shape == Shape::sphere ? 2 * outer_radius_m.value : length_m.value, stack};
}

Bore DropInputs::bore() const {
    return {bore_radius_m.value, outside_radius_m.value};
}

Bore DropInputs::whole_bore() const {
    Bore out = bore();
    for (const WallPart& p : wall) {
        out.inner_radius_m = std::min(out.inner_radius_m, p.bore.inner_radius_m);
        out.outer_radius_m = std::max(out.outer_radius_m, p.bore.outer_radius_m);
    }
    return out;
}

std::vector<WallPart> DropInputs::along() const {
    if (!wall.empty() || slit_length_m <= 0) return wall;
    const double end = slit_length_m - (slit_end_low + slit_end_high) / 2 * mean_radius(*this),
                 left = slit_drag(slits, magnet(), mean_radius(*this));
    return {{bore(), 0, end, left}, {bore(), end, tube_length_m.value}};
}

std::vector<WallOutline> DropInputs::outlines() const {
    if (!wall.empty()) return eddy::outlines(wall);
    return {{bore(), bore(), 0, tube_length_m.value}};
}

double Riding::factor(double share) const {
    // ln f = p s^2 + q s^4 through both.
    const double near = 16 * std::log(half), far = std::log(full), p = (near - far) / 3, s2 = share * share;
    return std::exp(p * s2 + (far - p) * s2 * s2);
}

Result<DropInputs> checked(const DropInputs& inputs) {
    if (const auto fault = size_fault(inputs)) return *fault;
    const Result<Magnet> magnet = checked(inputs.magnet());
    if (!magnet) return magnet.problem();
    const Result<Bore> bore = checked(inputs.bore(), *magnet);
    if (!bore) return bore.problem();
    for (const WallPart& p : inputs.wall)
        if (const Result<Bore> part = checked(p.bore, *magnet); !part) return part.problem();
    if (!(inputs.remanence_T.value > 0)) return refused("the magnet needs a remanence above zero");
    if (!(mass_of(inputs) > 0)) return refused("the magnet needs a mass above zero");
    const Result<double> factor = path_factor(inputs);
    if (!factor) return factor.problem();
    return inputs;
}

Result<double> path_factor(const DropInputs& i) {
    if (i.slits.count == 0 && i.off_axis_m == 0) return 1.0;
    const Bore bore = i.bore();
    if (!i.wall.empty())
        return refused("slits and off-axis travel are computed for a tube of one part: leave out liner, sleeve, taper "
                       "and the tube below, or the slits");
    if (i.slits.count > 0 && i.off_axis_m > 0)
        return refused("a slit tube with the magnet off its axis is not computed: give one of the two");
    if (i.off_axis_m > 0.9 * (bore.inner_radius_m - i.outer_radius_m.value) * (1 + 1e-9)) // rounding of typed figures
        return refused("off-axis travel: the magnet would rub on the wall: give a smaller distance from the axis");
    if (i.slits.count == 0) return off_axis_drag(i.off_axis_m, i.magnet(), bore);
    if (bore.outer_radius_m - bore.inner_radius_m > 0.5 * bore.inner_radius_m)
        return refused("slits are computed for thin walls: this one is thicker than half the bore radius");
    const double radius = mean_radius(i);
    if (i.slits.width_m > radius / 3 || i.slits.width_m * i.slits.count > 3 * radius)
        return refused("slits wider than a third of the wall's radius, or than half of it all round, are not computed");
    if (i.slit_length_m == 0) return slit_drag(i.slits, i.magnet(), radius);
    if (i.slit_length_m < radius || i.slit_length_m > i.tube_length_m.value - radius)
        return refused("slits that end within a wall radius of an end of the tube are not computed: leave their length "
                       "out, or the slits");
    return 1.0;
}

DropInputs with_riding(DropInputs i) {
    i.riding = {};
    if (i.slits.count > 0 || i.off_axis_m > 0) return i;
    const Bore bore = i.whole_bore();
    const double furthest = furthest_off_axis_m(i.magnet(), bore);
    const Result<double> half = off_axis_drag(furthest / 2, i.magnet(), bore),
                         full = off_axis_drag(furthest, i.magnet(), bore);
    if (half && full) i.riding = {furthest, std::max(*half, 1.0), std::max(*full, 1.0)};
    return i;
}

double chance_too_wide(const DropInputs& i) {
    constexpr std::size_t points = 100;
    static const std::array<double, points> quantiles = [] { // asked in every frame of the window
        std::array<double, points> out{};
        for (std::size_t k = 0; k < points; ++k) out[k] = normal_quantile((static_cast<double>(k) + 0.5) / points);
        return out;
    }();
    const double narrower = i.bore_radius_m.value - i.whole_bore().inner_radius_m; // a liner, a taper
    int wide = 0;
    for (const double b : quantiles) {
        const double free_radius_m = i.bore_radius_m.at(b) - narrower;
        for (const double m : quantiles) wide += i.outer_radius_m.at(m) >= free_radius_m;
    }
    return wide / static_cast<double>(points * points);
}

double nominal_wall_area_m2(const DropInputs& i) {
    return wall_area(i.bore_radius_m.value, i.outside_radius_m.value);
}

std::vector<Variation> tube_variations(const DropInputs& inputs, Draws& draws) {
    std::vector<Variation> out(draws.samples());
    const std::vector<double> bore = draws.of("tube.bore"), outside = draws.of("tube.outside"),
                              length = draws.of("tube.length");
    for (std::size_t i = 0; i < out.size(); ++i)
        out[i] = {1, 0, inputs.tube_length_m.at(length[i]),
                  wall_area(inputs.bore_radius_m.at(bore[i]), inputs.outside_radius_m.at(outside[i]))};
    return out;
}

DropModel::DropModel(const DropInputs& inputs)
    : inputs_(inputs),
      moment_(eddy::moment_A_m2(inputs.magnet(), inputs.remanence_T.value, inputs.recoil_permeability)),
      curve_(TubeDrag(inputs.magnet(), inputs.bore())), ends_(inputs.magnet(), inputs.bore()) {
    const double path = *path_factor(inputs); // checked
    nominal_ = {path, mass_of(inputs), inputs.tube_length_m.value, nominal_wall_area_m2(inputs)};
    if (std::vector<WallPart> parts = inputs.along(); !parts.empty()) {
        wall_.emplace(inputs.magnet(), std::move(parts));
        level_ = wall_->level(ends_);
    }
    levers_ = {{"magnet.diameter", &DropInputs::outer_radius_m, 0}};
    if (inputs.shape != Shape::sphere) levers_.push_back({"magnet.length", &DropInputs::length_m, 0});
    if (inputs.shape == Shape::ring) levers_.push_back({"magnet.hole", &DropInputs::inner_radius_m, 0});
    for (Lever& lever : levers_)
        lever.sensitivity = sensitivity([&](double factor) {
            DropInputs moved = inputs_;
            (moved.*lever.input).value *= factor;
            return moved;
        });
    levers_.push_back({"tube.bore", &DropInputs::bore_radius_m,
                       sensitivity([&](double factor) { return with_bore(factor * inputs_.bore_radius_m.value); })});
    if (!inputs.wall_area_held)
        wall_sensitivity_ = sensitivity([&](double factor) {
            DropInputs moved = inputs_;
            moved.outside_radius_m.value = moved.bore_radius_m.value + factor * wall_m(inputs_);
            return moved;
        });
}

template <class Scaled> double DropModel::sensitivity(Scaled&& scaled) const {
    constexpr double step = 1e-4;
    return (ln_drag_per_remanence(scaled(1 + step)) - ln_drag_per_remanence(scaled(1 - step))) / (2 * step);
}

DropInputs DropModel::with_bore(double bore_radius_m) const {
    DropInputs moved = inputs_;
    moved.bore_radius_m.value = bore_radius_m;
    moved.outside_radius_m.value =
        inputs_.wall_area_held
            ? std::sqrt(bore_radius_m * bore_radius_m + nominal_wall_area_m2(inputs_) / std::numbers::pi)
            : bore_radius_m + wall_m(inputs_);
    return moved;
}

double DropModel::ln_drag_per_remanence(const DropInputs& i) const {
    const auto drag = [&](const Bore& b) { // over mu0^2 m^2 sigma / (2 pi^2)
        return TubeDrag::low_speed_of(i.magnet(), b) / std::pow(b.inner_radius_m, 3);
    };
    double sum = i.wall.empty() ? drag(i.bore()) : 0;
    for (const WallPart& p : i.wall) sum += p.conductivity * (p.to_m - p.from_m) * drag(moved(p, i));
    return std::log(sum) + 2 * std::log(eddy::moment_A_m2(i.magnet(), 1, i.recoil_permeability));
}

Bore DropModel::moved(const WallPart& part, const DropInputs& to) const {
    const double inner = part.bore.inner_radius_m + to.bore_radius_m.value - inputs_.bore_radius_m.value,
                 wall = part.bore.outer_radius_m - part.bore.inner_radius_m;
    return {inner, inner + (part.piece == 0 ? wall * wall_m(to) / wall_m(inputs_) : wall)};
}

FallSetup DropModel::setup(double conductivity, const Variation& v) const {
    FallSetup s = fall_setup(curve_, ends_, moment_, level_ * conductivity, v.mass_kg, v.tube_length_m);
    s.force_scale_N *= v.drag;
    s.wall = wall();
    s.from_depth_m = inputs_.from_depth_m;
    s.beyond_m = inputs_.beyond_m;
    return s;
}

const WallModes& DropModel::modes() const {
    if (!modes_ && inputs_.wall.empty())
        modes_ = std::make_shared<const WallModes>(inputs_.magnet(), inputs_.bore(), nominal_.tube_length_m);
    if (!modes_) {
        std::vector<WallPart> parts = inputs_.wall; // over the conductivity that setup() gives the tube
        for (WallPart& p : parts) p.conductivity /= level_;
        modes_ = std::make_shared<const WallModes>(inputs_.magnet(), parts);
    }
    return *modes_;
}

Fall DropModel::fall(const FallSetup& setup, bool with_path) const {
    constexpr double longest = 40, counts = 5e-4; // bore radii; of the time
    Fall at_once = eddy::fall(setup, with_path);
    if (inputs_.slits.count > 0 || setup.tube_length_m > longest * inputs_.bore_radius_m.value ||
        fading_time_s(setup) < counts * at_once.time_s)
        return at_once;
    Fall followed = fall_with_currents(setup, modes(), with_path).fall;
    if (!followed.fault.empty()) return at_once;
    followed.currents_s = followed.time_s - at_once.time_s;
    return followed;
}

std::vector<Variation> DropModel::variations(Draws& draws) const {
    std::vector<Variation> out(draws.samples());
    const auto& br = draws.of("magnet.remanence");
    const auto& doubt = draws.of("magnet.moment");
    const auto& heavy = draws.of("magnet.mass");
    const auto& outside = draws.of("tube.outside");
    const auto& length = draws.of("tube.length");
    const auto& riding = draws.of("drop.riding");
    const bool doubted = inputs_.path_doubt.spread > 0;
    const std::vector<double> path = doubted ? draws.of("tube.path") : std::vector<double>();
    const double wall = wall_m(inputs_);
    for (std::size_t i = 0; i < out.size(); ++i) {
        DropInputs here = inputs_;
        double ln_drag = 2 * std::log(inputs_.remanence_T.at(br[i]) / inputs_.remanence_T.value);
        if (inputs_.moment_doubt.value > 0) ln_drag += 2 * std::log(inputs_.moment_doubt.at(doubt[i]));
        for (const Lever& lever : levers_) {
            Uncertain& input = here.*lever.input;
            const double nominal = input.value;
            input.value = input.at(draws.of(lever.key)[i]);
            ln_drag += lever.sensitivity * std::log(input.value / nominal);
        }
        if (inputs_.wall_area_held) {
            here.outside_radius_m = with_bore(here.bore_radius_m.value).outside_radius_m;
        } else {
            here.outside_radius_m.value =
                std::max(inputs_.outside_radius_m.at(outside[i]), here.bore_radius_m.value + no_wall * wall);
            ln_drag += wall_sensitivity_ * std::log(wall_m(here) / wall);
        }
        if (doubted) ln_drag += std::log(inputs_.path_doubt.at(path[i]));
        if (inputs_.mass_kg.value > 0) here.mass_kg.value = inputs_.mass_kg.at(heavy[i]);
        here.density_kg_m3.value = inputs_.density_kg_m3.at(heavy[i]);
        out[i] = {nominal_.drag * std::exp(ln_drag) * inputs_.riding.factor(probability_below(riding[i])),
                  mass_of(here), inputs_.tube_length_m.at(length[i]),
                  wall_area(here.bore_radius_m.value, here.outside_radius_m.value)};
    }
    return out;
}

} // namespace pourbook::eddy

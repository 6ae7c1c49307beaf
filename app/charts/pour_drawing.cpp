#include "charts/pour_drawing.hpp"

#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/amounts.hpp"
#include "questions/say/in_units_of.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

using casting::DimensionPlan;

std::string rounded_length(double metres, UnitSystem units) {
    return length_text(std::round(metres * 1e4) / 1e4, units);
}

const DimensionPlan* dimension(const PourResult& plan, const char* name) {
    if (plan.patterns.empty()) return nullptr;
    for (const DimensionPlan& d : plan.patterns.front().dimensions)
        if (d.name.find(name) != std::string::npos) return &d;
    return nullptr;
}

/// Sizes of the first piece standing upright: its longest side is its height.
void take_sizes(PourDrawing& d, const PourResult& plan) {
    if (plan.request.pieces.empty()) return;
    const casting::Solid solid = plan.patterns.empty() ? plan.request.pieces.front().solid : plan.patterns.front().cast;
    std::array<double, 3> box = solid.box_m;
    std::sort(box.begin(), box.end());
    d.outside_m = box[1];
    d.height_m = box[2];
    d.bore_m = solid.bore_m;
    if (plan.patterns.empty()) return;
    const DimensionPlan *outside = dimension(plan, "outside"), *bore = dimension(plan, "bore"),
                        *length = dimension(plan, "length");
    const double scale = outside  ? outside->pattern_m / outside->cast_m
                         : length ? length->pattern_m / length->cast_m
                                  : 1;
    d.pattern_outside_m = outside ? outside->pattern_m : d.outside_m * scale;
    d.pattern_height_m = length ? length->pattern_m : d.height_m * scale;
    d.pattern_bore_m = bore ? bore->pattern_m : 0;
}

LimitBar limit(const std::string& name, double needed, std::optional<double> mine,
               const std::function<std::string(double)>& shown, double zero = 0) {
    LimitBar bar{name, shown(needed), "", 0};
    if (!mine) return bar;
    bar.mine = shown(*mine);
    bar.share = (needed - zero) / (*mine - zero);
    return bar;
}

void take_limits(PourDrawing& d, const PourResult& plan, const casting::Workshop& mine, UnitSystem units) {
    const auto heat = [&](double kelvin) { return furnace_temperature(kelvin, units); };
    const auto volume = [&](double m3) { return pretty_unit(volume_text(m3, units, 3)); };
    const auto mass = [&](double kg) { return mass_text(kg, units); };
    constexpr double room_K = room_temperature_K; // a bar of a temperature begins where the charge does
    d.limits.push_back(limit("furnace", d.pour_K, mine.furnace_maximum_K, heat, room_K));
    d.limits.push_back(limit("crucible", plan.melt_volume_m3, mine.crucible_volume_m3, volume));
    d.limits.push_back(limit("lift", plan.charge.charge_kg, mine.lift_maximum_kg, mass));
    if (std::isfinite(plan.mould_K))
        d.limits.push_back(limit("mould", plan.mould_K, mine.mould_maximum_K, heat, room_K));
}

} // namespace

PourDrawing pour_drawing(const Catalogue& catalogue, const PourResult& plan, const casting::Workshop& mine,
                         UnitSystem units) {
    PourDrawing d;
    d.title = "Pouring " + plan.metal->name;
    take_sizes(d, plan);
    if (plan.freezing && std::isfinite(plan.freezing->wall_m)) d.mould_wall_m = plan.freezing->wall_m;
    if (plan.feeding.feeder) {
        d.feeder_m = plan.feeding.feeder->chosen().diameter_m;
        d.feeder_height_m = plan.feeding.feeder->chosen().height_m;
    }
    const casting::GatingPlan& gating = plan.fill.gating;
    if (std::isfinite(gating.foot_m) && std::isfinite(gating.top_m) && gating.head_m > 0) {
        d.sprue_foot_m = gating.foot_m;
        d.sprue_top_m = gating.top_m;
        d.sprue_height_m = gating.head_m;
    }
    d.pour_K = plan.heat.pour.value_si;
    d.mould_K = plan.mould_K;
    d.outside = rounded_length(d.outside_m, units);
    d.height = rounded_length(d.height_m, units);
    if (d.bore_m > 0) d.bore = rounded_length(d.bore_m, units);
    if (d.pattern_height_m > 0)
        d.pattern = "pattern: " + rounded_length(d.pattern_outside_m, units) + " outside, " +
                    rounded_length(d.pattern_height_m, units) + " long";
    d.heat = "pour at " + furnace_temperature(d.pour_K, units) +
             (std::isfinite(d.mould_K) ? ", mould at " + furnace_temperature(d.mould_K, units) : "");
    take_limits(d, plan, mine, units);
    for (const casting::Warning& w : plan.cautions) d.cautions.push_back(in_units_of(units, w.text));
    for (const auto& s : plan.limits.sources) d.origin.sources.push_back(s.key);
    d.origin.data_version = catalogue.data_version;
    return d;
}

} // namespace pourbook

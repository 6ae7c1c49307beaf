#include "questions/pour/pour_gating.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double light_metal_kg_m3 = 3500;

double surface_tension_N_m(const casting::Material& material) {
    const Metal* principal = casting::principal_element(material);
    if (!principal || principal->composition.empty()) return no_number;
    for (const Practice& p : material.catalogue.practices)
        if (p.quantity == "surface_tension" && p.element == principal->composition.front().element)
            return p.figure.value_si;
    return no_number;
}

} // namespace

bool light_metal(const PourResult& plan) {
    return plan.density.value_si < light_metal_kg_m3;
}

casting::GatingPlan gating_of(const casting::Material& material, const PourResult& plan) {
    casting::GatingInputs g;
    g.cavity_kg = plan.cast_mass_kg + plan.feeder_kg;
    g.cavity_m3 = g.cavity_kg / plan.melt_density.value_si;
    g.thinnest_m = plan.fill.wall_m;
    g.thinnest_s = plan.thinnest_s;
    g.height_m = plan.heaviest.box_m[2];
    g.longest_m = *std::max_element(plan.heaviest.box_m.begin(), plan.heaviest.box_m.end());
    g.gate_spacing_m = plan.feeding.gate_spacing_m;
    g.light_metal = light_metal(plan);
    g.sprue_m = plan.request.sprue_height_m.value_or(no_number);
    g.foot_m = plan.request.sprue_foot_m.value_or(no_number);
    g.surface_tension_N_m = surface_tension_N_m(material);
    g.density_kg_m3 = plan.melt_density.value_si;
    return casting::gating_plan(material.catalogue, material.metal, plan.request.process, g);
}

casting::SprueLoad sprue_load_of(const casting::Material& material, const PourResult& plan) {
    const casting::Consumables& c = plan.consumables;
    if (c.filament_kg.empty() || c.shell_kg.empty()) return {};
    const double longest = *std::max_element(plan.heaviest.box_m.begin(), plan.heaviest.box_m.end());
    return casting::sprue_load(material.catalogue, material.metal, c.filament_kg.high_si, c.shell_kg.high_si, longest,
                               plan.fill.gating.foot_m);
}

std::string weak_sprue(const PourResult& plan) {
    if (!plan.sprue_load.breaks()) return {};
    return "Pattern and wet shell weigh about " + significant(plan.sprue_load.mass_kg, 2) + " kg: a printed sprue of " +
           significant(1000 * plan.fill.gating.foot_m, 2) +
           " mm at the foot breaks if it holds them level. Hang them upright, or put a rod through it.";
}

} // namespace pourbook

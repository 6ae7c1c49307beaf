#include "core/casting/furnace.hpp"

#include <algorithm>

namespace pourbook::casting {
namespace {

constexpr double bright_K = 1473.15;

} // namespace

Firing firing(const Catalogue& catalogue, const Metal& metal, double energy_J, double pour_K,
              std::optional<double> power_W, std::optional<double> efficiency) {
    const auto efficiencies = practices(catalogue, metal, "furnace_efficiency", "");
    const Range electric = range_of(of_material(efficiencies, "small resistance furnace"));
    const Range gas = range_of(of_material(efficiencies, "small propane furnace, first heat"));
    const Range propane = range_of(of_material(practices(catalogue, metal, "fuel_heating_value", ""), "propane"));
    Firing f;
    f.efficiency_low = efficiency.value_or(electric.low_si);
    f.efficiency_high = efficiency.value_or(electric.high_si);
    if (power_W) {
        f.seconds_low = energy_J / (*power_W * f.efficiency_high);
        f.seconds_high = energy_J / (*power_W * f.efficiency_low);
    }
    f.propane_kg_low = energy_J / (propane.middle() * efficiency.value_or(gas.high_si));
    f.propane_kg_high = energy_J / (propane.middle() * efficiency.value_or(gas.low_si));
    const Range hot = range_of(of_material(efficiencies, "small propane furnace, hot"));
    const Range burner = range_of(practices(catalogue, metal, "burner_power", ""));
    const Range warm_up = range_of(practices(catalogue, metal, "warm_up", ""));
    const double heat_J_kg = propane.middle();
    if (!efficiency) {
        const double warmed = std::min(1.0, (pour_K - room_temperature_K) / (bright_K - room_temperature_K));
        f.propane_kg_low = std::max(f.propane_kg_low, warmed * burner.low_si * warm_up.low_si / heat_J_kg);
        f.propane_kg_high = std::max(f.propane_kg_high, warmed * burner.high_si * warm_up.high_si / heat_J_kg);
    }
    f.again_kg_low = energy_J / (heat_J_kg * efficiency.value_or(hot.high_si));
    f.again_kg_high = energy_J / (heat_J_kg * efficiency.value_or(hot.low_si));
    f.burner_s_low = f.propane_kg_low * heat_J_kg / burner.low_si;
    f.burner_s_high = f.propane_kg_high * heat_J_kg / burner.high_si;
    f.again_s_low = f.again_kg_low * heat_J_kg / burner.high_si;
    f.again_s_high = f.again_kg_high * heat_J_kg / burner.low_si;
    for (const Range* range : {&hot, &burner, &warm_up})
        f.sources.insert(f.sources.end(), range->sources.begin(), range->sources.end());
    for (const Range* range : {&electric, &gas, &propane})
        f.sources.insert(f.sources.end(), range->sources.begin(), range->sources.end());
    return f;
}

} // namespace pourbook::casting

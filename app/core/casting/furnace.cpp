#include "core/casting/furnace.hpp"

namespace pourbook::casting {

Firing firing(const Catalogue& catalogue, const Metal& metal, double energy_J, std::optional<double> power_W,
              std::optional<double> efficiency) {
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
    for (const Range* range : {&electric, &gas, &propane})
        f.sources.insert(f.sources.end(), range->sources.begin(), range->sources.end());
    return f;
}

} // namespace pourbook::casting

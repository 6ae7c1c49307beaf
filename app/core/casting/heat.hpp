// Heat into the charge from room temperature to the pour: sensible heat of the solid, heat of fusion, sensible heat of
// the melt. Heat capacities are integrated over the cited data (Simpson's rule); between solidus and liquidus the mean
// of solid at the solidus and melt at the liquidus stands. No furnace loss, no heat into crucible and lining, no heat
// of mixing. Range: start below the solidus, pour at or above the liquidus.
#pragma once

#include "core/casting/melt_data.hpp"

namespace pourbook::casting {

struct MeltHeat { // J/kg
    Traced solid, fusion, melt;
    double total_J_kg = 0;
    double standard_uncertainty_J_kg = 0;
    bool estimated = false;
};

/// Errors: no_value (a heat that is neither cited nor estimable), refused (pour below the liquidus).
Result<MeltHeat> heat_to_pour(const Material& material, double start_K, double pour_K);

} // namespace pourbook::casting

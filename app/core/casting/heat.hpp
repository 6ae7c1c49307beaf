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

/// The same with constant heat capacities, as textbooks do it:
/// c_s (T_solidus - T_start) + (c_s + c_l)/2 (T_liquidus - T_solidus) + L + c_l (T_pour - T_liquidus).
struct ConstantHeats {
    double solid_J_kg_K = 0, fusion_J_kg = 0, melt_J_kg_K = 0;
    double solidus_K = 0, liquidus_K = 0;
};
double heat_to_pour_J_kg(const ConstantHeats& metal, double start_K, double pour_K);

} // namespace pourbook::casting

// Density of a piece from its weight in air and hanging in water.
//
//   rho = (A rho_w - W rho_a) / (A - W)      A, W: readings in air and in water
// The same weights are read twice, so what the air lifts of them drops out. rho_a, air of a room: 1.2 kg/m3, +- 0.1.
// rho_w, water without air at 1 atm: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97, as F. E. Jones and G. L. Harris print
// it (J. Res. Natl. Inst. Stand. Technol. 97 (1992) 335; two digits of the denominator are swapped in the copy read,
// set right by another copy and by their own equation), 0 to 100 degC here; to 0.01 kg/m3. Tap water: 0.2 kg/m3 more or
// less. Uncertainty, every half width taken as even: readings, water's temperature, and the volume of bubbles and
// thread, 0.05 cm3 (common practice, no source). Pores that are open to the water count as water, not as pores: seal
// them.
#pragma once

#include "core/result.hpp"

namespace pourbook {

/// Of water, kg/m3; NaN outside 273.15 to 373.15 K.
double water_density_kg_m3(double temperature_K);

struct Weighing {
    double air_kg = 0, air_half_kg = 0;     // reading and the half of its last digit
    double water_kg = 0, water_half_kg = 0; // the same, hanging in water
    double water_K = 293.15, water_half_K = 1;
};

struct WeighedDensity {
    double density_kg_m3 = 0, standard_uncertainty = 0;
    double volume_m3 = 0;
};

/// Errors: refused (no less in water than in air, water frozen or boiling).
Result<WeighedDensity> density_in_water(const Weighing& weighing);

} // namespace pourbook

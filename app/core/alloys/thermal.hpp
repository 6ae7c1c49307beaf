// Temperature coefficient and thermal conductivity from an estimated resistivity, near 20 degC.
//
// Temperature coefficient: by Matthiessen's rule d(rho)/dT is the pure host's, alpha = (d rho_host/dT) / rho.
// Range: added resistivity below 1.5 uohm cm and less than 5 % of a second metal; refused above (in concentrated copper
// alloys the slope is 50 to 75 % higher than the rule: aluminium bronze in the CRC table).
//
// Thermal conductivity: k = L sigma T + lattice part (Wiedemann and Franz). Copper and its alloys L = 2.39e-8 W ohm/K2,
// lattice 7.5 W/(m K) (C. S. Smith and E. W. Palmer, Trans. AIME 117, 1935, 225, from memory); aluminium L = 2.10e-8,
// lattice 12.6 W/(m K) (Bungardt and Kallenbach 1950, from memory); others Sommerfeld's L = 2.443e-8 and 5 W/(m K) as
// a bare estimate of the lattice part. Range: metals near room temperature; not bismuth, antimony, silicon.
#pragma once

#include "core/alloys/resistivity.hpp"

namespace pourbook {

/// Referred to 20 degC, 1/K. Errors: out_of_range.
Result<Estimate> estimate_temperature_coefficient(const Catalogue& catalogue, const ResistivityEstimate& resistivity);

/// W/(m K) at 20 degC. Errors: refused for semimetals.
Result<Estimate> estimate_thermal_conductivity(const ResistivityEstimate& resistivity);

} // namespace pourbook

// Density of an alloy at 20 degC from its composition: specific volumes add, 1/rho = sum w_i / rho_i, with the
// published change of atomic volume for solutes that are dissolved: V = n V_host (1 + sum x_i Omega_i) (H. W. King, J.
// Mater. Sci. 1, 1966, 79). Solutes without a published volume effect, and what is out of solution, count with their
// own volume. Range: sound metal (no pores); elements without a density are left out below 1 wt%.
#pragma once

#include "core/alloys/dissolved.hpp"

namespace pourbook {

/// Errors: no_value (an element of 1 wt% or more without a cited density).
Result<Estimate> estimate_density(const AlloySetting& setting);

} // namespace pourbook

// What a tube's drag is held to: the closed form for a dipole.
#pragma once

#include "core/eddy/tube_drag.hpp"

#include <cmath>

namespace pourbook::testing {

/// k of the dipole and of the uniformly magnetised sphere at low speed, on the axis of a long tube:
/// (15/1024) mu0^2 m^2 sigma (1/a^3 - 1/b^3).
inline double dipole_coefficient_N_s_m(double moment_A_m2, double conductivity_S_m, const eddy::Bore& bore) {
    const double mu0m = eddy::vacuum_permeability * moment_A_m2;
    return 15.0 / 1024.0 * mu0m * mu0m * conductivity_S_m *
           (std::pow(bore.inner_radius_m, -3) - std::pow(bore.outer_radius_m, -3));
}

} // namespace pourbook::testing

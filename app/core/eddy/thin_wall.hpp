// Low-speed drag of a small magnet (dipole) on or off the axis of a thin-walled tube, whole or slit: factors on the
// drag of the whole tube with the magnet on its axis.
//
// A moving field drives currents along the wall's surface; with n equally spaced, narrow, full-length slits no current
// crosses a slit. Per axial wave number x/a the stream function on the unrolled wall solves psi'' - x^2 psi = source,
// psi = 0 at the slits:
//   slit     [int x^4 K1(x)^2 (1 - tanh(pi x/n)/(pi x/n)) dx] / (45 pi^2/512)
//   off axis [sum_m int x^4 (I_m(x d/a) K_m'(x))^2 x^2/(x^2 + m^2) dx] / (45 pi^2/512), m = -inf..inf, d < 0.6 a
// Derived from Maxwell's equations at low speed; checked against finite differences on the unrolled wall (0.767
// for one slit; 1.052, 1.227, 1.598 at d/a = 0.1, 0.2, 0.3).
// Range: magnet short against the bore (a long rod in a slit tube loses more), wall thin against the bore, slit narrow,
// low speed.
#pragma once

#include "core/result.hpp"

namespace pourbook::eddy {

/// Drag left by n >= 1 slits, relative to the whole tube.
double slit_drag(int slits);

/// Drag at a distance d from the axis relative to that on it; offset = d/a. Errors: refused outside 0..0.6.
Result<double> off_axis_drag(double offset);

} // namespace pourbook::eddy

// Low-speed drag of a magnet on or off the axis of a thin-walled tube, whole or slit: factors on the drag of the whole
// tube with the magnet on its axis.
//
// A moving field drives currents along the wall's surface; with n equally spaced, narrow, full-length slits no current
// crosses a slit. Per axial wave number x/a the stream function on the unrolled wall solves psi'' - x^2 psi = source,
// psi = 0 at the slits:
//   slit     [int x^4 S^2 K1(x)^2 (1 - tanh(pi x/n)/(pi x/n)) dx] / N
//   off axis [sum_m int x^4 S^2 (I_m(x d/a) K_m'(x))^2 x^2/(x^2 + m^2) dx] / N, m = -inf..inf, d < 0.6 a
// S(x/a) the magnet's spectrum (1 for a sphere; Graf's addition theorem for K0 about the magnet's own axis), a the
// wall's mean radius, N = int x^4 S^2 K1(x)^2 dx (45 pi^2/512 for a sphere).
// Derived from Maxwell's equations at low speed; checked against finite differences on the unrolled wall (0.767
// for one slit; 1.052, 1.227, 1.598 at d/a = 0.1, 0.2, 0.3).
// Range: slit narrow, low speed, magnet parallel to the axis. A wall of any thickness is summed over shells for
// off-axis travel (weights r^-4 N(r)); what flows from shell to shell is left out, in a thick wall. For slits the wall
// is taken at its mean radius: in a thick one the currents also close across its thickness, and more drag is left than
// this.
#pragma once

#include "core/eddy/tube_drag.hpp"
#include "core/result.hpp"

namespace pourbook::eddy {

/// Drag left by n >= 1 slits, relative to the whole tube.
double slit_drag(int slits, const Magnet& magnet, double wall_radius_m);

/// Drag at a distance from the axis relative to that on it. Errors: refused outside 0..0.6 bore radii, and where the
/// magnet comes within a tenth of its clearance to the wall.
Result<double> off_axis_drag(double distance_m, const Magnet& magnet, const Bore& bore);

/// The furthest from the axis that off_axis_drag answers.
double furthest_off_axis_m(const Magnet& magnet, const Bore& bore);

} // namespace pourbook::eddy

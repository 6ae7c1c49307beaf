// Low-speed drag of a magnet on or off the axis of a thin-walled tube, whole or slit: factors on the drag of the whole
// tube with the magnet on its axis.
//
// A moving field drives currents along the wall's surface; with n equally spaced full-length slits of width g no
// current crosses a slit, or only what a seam that fills it lets through: one that resists as much as a length l of the
// wall (its resistivity over the wall's, times g; open: l = inf). Per axial wave number x/a, lengths in a, the stream
// function on the unrolled wall solves psi'' - x^2 psi = source between the slits and [psi'] = x^2 l psi - g source
// across one:
//   slit     [int x^4 S^2 K1(x)^2 ((c - g)(1 - D tanh(t)/t) + g (1 - D)) / c dx] / N,
//            D = x (l - g) / (2 tanh t + x l), t = x (c - g)/2, c = 2 pi/n (open, narrow: 1 - tanh(t)/t)
//   off axis [sum_m int x^4 S^2 (I_m(x d/a) K_m'(x))^2 x^2/(x^2 + m^2) dx] / N, m = -inf..inf, d < 0.6 a
// S(x/a) the magnet's spectrum (1 for a sphere; Graf's addition theorem for K0 about the magnet's own axis), a the
// wall's mean radius, N = int x^4 S^2 K1(x)^2 dx (45 pi^2/512 for a sphere).
// Derived from Maxwell's equations at low speed; checked against finite differences on the unrolled wall (0.767
// for one slit; 1.052, 1.227, 1.598 at d/a = 0.1, 0.2, 0.3; widths and seams: tests/eddy/slit_wall.py). Where a slit
// ends in the tube, the drag goes over from one law to the other; summed over the way as though it ended sharply, the
// slit 0.2 to 0.28 wall radii shorter than it is (the same finite differences: balls and cylinders, 1 to 4 slits).
// Range: slit up to a third of the wall's radius wide, low speed, magnet parallel to the axis. A wall of any thickness
// is summed over shells for off-axis travel (weights r^-4 N(r)); what flows from shell to shell is left out, in a thick
// wall. For slits the wall is taken at its mean radius: in a thick one the currents also close across its thickness,
// and more drag is left than this.
#pragma once

#include "core/eddy/tube_drag.hpp"
#include "core/result.hpp"

#include <cmath>

namespace pourbook::eddy {

struct Slits {
    int count = 0; // evenly round the wall
    double width_m = 0;
    double seam_m = INFINITY; // length of the wall's metal that resists as what fills a slit; open: infinite
};

/// Drag left by slits, relative to the whole tube.
double slit_drag(const Slits& slits, const Magnet& magnet, double wall_radius_m);

/// How much shorter than it is a slit acts that ends in the tube, in wall radii: limits.
constexpr double slit_end_low = 0.15, slit_end_high = 0.35;

/// Drag at a distance from the axis relative to that on it. Errors: refused outside 0..0.6 bore radii, and where the
/// magnet comes within a tenth of its clearance to the wall.
Result<double> off_axis_drag(double distance_m, const Magnet& magnet, const Bore& bore);

/// The furthest from the axis that off_axis_drag answers.
double furthest_off_axis_m(const Magnet& magnet, const Bore& bore);

} // namespace pourbook::eddy

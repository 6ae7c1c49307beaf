// A ball whose moment lies across the tube: its low-speed drag relative to that with the moment along the tube.
//
// In the tube's frame the moving field B gives E0 = -v x B; free charges add -grad phi with laplace phi = 0 in the wall
// and no current through its faces, so that of the first azimuthal harmonic, per axial wave number q,
//   phi = sin t [alpha I1(qr) + beta K1(qr)],  phi' = v B_t at both faces
// and the power sigma |E|^2 is summed over the wall; any wall thickness. Derived from Maxwell's equations at low speed
// for a point dipole, which a uniformly magnetised sphere is outside itself. Thin wall: 0.686 (an independent
// calculation with the stream function of the current sheet). Range: low speed, on the axis, far from the ends.
#pragma once

#include "core/eddy/tube_drag.hpp"

namespace pourbook::eddy {

double across_over_along(const Bore& bore);

} // namespace pourbook::eddy

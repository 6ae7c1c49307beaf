// The fall of a magnet together with the currents in the wall, in time: short and cold tubes, thick walls, heavy
// magnets, where the currents do not follow the magnet at once.
//
//   M dv/dt = M g + sum G_k(z) y_k,   tau_k dy_k/dt + y_k = -G_k(z) v      (wall_modes.hpp)
// from a release without currents. The couplings are scaled at each depth so that steady slow
// motion meets exactly the low-speed drag of fall.hpp (its ends included): the rings decide how the currents build up
// and fade, not how much the wall brakes. Implicit midpoint rule, which keeps the balance of energy to rounding; steps
// by comparing one with two halves.
// Range: as WallModes; up to about 40 bore radii of tube.
#pragma once

#include "core/eddy/fall.hpp"
#include "core/eddy/wall_modes.hpp"

namespace pourbook::eddy {

struct CurrentFall {
    Fall fall;
    double balance = 0; // energy found less the height's, over the height's
};

CurrentFall fall_with_currents(const FallSetup& setup, const WallModes& modes, bool with_path = false,
                               double tolerance = 1e-5);

/// Time in which currents fade in a wall: mu0 sigma a w / 4, w no more than the bore radius a.
double fading_time_s(const FallSetup& setup);

} // namespace pourbook::eddy

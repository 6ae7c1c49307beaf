// How a magnet moves where a plate brakes it: down a slope, as a pendulum, falling face-on upon a block.
#pragma once

#include "core/eddy/plate.hpp"

#include <functional>
#include <optional>

namespace pourbook::eddy {

/// Drag and lift at a speed, as plate_force gives them at one height.
using ForceAtSpeed = std::function<PlateForce(double speed_m_s)>;

/// The even speed of a slide down a slope: M g sin = drag + friction (M g cos - lift), no friction where the lift
/// carries the magnet. Empty where friction alone holds it, or where it outruns the drag's peak (`peak_speed_m_s`).
struct Slide {
    std::optional<double> speed_m_s;
    bool stays = false; // friction holds it
};
Slide slide(const ForceAtSpeed& force, double peak_speed_m_s, double mass_kg, double slope_rad, double friction);

/// A pendulum whose bob passes the plate at the same height all along a small arc: M s'' = - M g s / l - drag(s').
struct Swing {
    double period_s = 0;              // without the plate, 2 pi sqrt(l / g)
    std::optional<double> half_after; // swings there and back until the amplitude is half; empty: it creeps to rest
    double rest_s = 0;                // until it stays within a hundredth of the first amplitude
};
Swing swing(const ForceAtSpeed& force, double mass_kg, double length_m, double amplitude_m);

/// A magnet, its axis upright, falling on the middle of a round block: at each height the currents of slow motion, F =
/// v 2 pi sigma int int r B_r^2 dr dz over the block (tube_drag.hpp's low-speed law, a bore of nothing). Over a half
/// space a dipole has F = mu0^2 m^2 sigma v / (64 pi h^3), from the same integral. The time in which the block's
/// currents fade (mu0 sigma d^2 / 4, d the height of the centre) is left out: `slow` says whether it is short against
/// the fall.
struct Block {
    double radius_m = 0, thickness_m = 0, conductivity_S_m = 0;
};
struct BlockFall {
    double time_s = 0;      // until it lies on the block
    double touch_m_s = 0;   // speed then
    double free_fall_s = 0; // over the same way
    double fading_s = 0;    // of the currents, at the end
    bool slow = true;       // fading_s is below a twentieth of the time
};
/// Low-speed coefficient in N s/m with the magnet's centre at a height above the block.
double block_drag_N_s_m(const Magnet& magnet, double moment_A_m2, const Block& block, double height_m);
/// Released with its lower face at a height.
BlockFall fall_on_block(const Magnet& magnet, double moment_A_m2, double mass_kg, const Block& block, double gap_m);

} // namespace pourbook::eddy

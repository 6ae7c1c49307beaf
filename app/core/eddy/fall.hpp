// The fall of a magnet through a finite tube: released with its centre at the mouth or elsewhere, until its centre
// leaves or reaches another depth. Depths are those of the magnet's centre below the mouth.
//
// M dv/dt = M g - F(v) share(z), F the drag of the long tube at any speed, share(z) that of both ends (end_effect.hpp).
// Integrated by Rodas, a method of order 4 for stiff equations, with step control (tolerance 3e-5 a step, which leaves
// 1e-6 of the time); where the magnet has settled, the uniform stretch is one division. Relative error of the time
// mostly 1e-5, at most 3e-4. Air drag, rubbing, tilt and eccentric travel are left out, and so is the time that the
// currents take to build up (wall_currents.hpp).
#pragma once

#include "core/eddy/drag_curve.hpp"
#include "core/eddy/wall_parts.hpp"

#include <string>
#include <vector>

namespace pourbook::eddy {

/// One magnet and tube with everything that the motion needs. The curve, the ends and the wall must outlive it.
struct FallSetup {
    const DragCurve* curve = nullptr;
    const EndEffect* ends = nullptr;
    const WallProfile* wall = nullptr; // of several parts, a tube of another length taken as that one stretched
    double force_scale_N = 0;          // mu0 m^2 / (2 pi^2 a^4)
    double u_per_speed = 0;            // mu0 sigma a, s/m
    double mass_kg = 0;
    double tube_length_m = 0;
    double from_depth_m = 0, from_speed_m_s = 0; // release
    double beyond_m = 0;                         // the timing ends this far below the tube
    double gravity_m_s2 = standard_gravity_m_s2;

    double drag_N(double speed_m_s) const { return force_scale_N * curve->force(u_per_speed * speed_m_s); }
    double coefficient_N_s_m() const { return force_scale_N * u_per_speed * curve->low_speed(); }
    double to_depth_m() const { return tube_length_m + beyond_m; }
    double way_m() const { return to_depth_m() - from_depth_m; }
    double free_fall_time_s() const; // over the same way, without a tube
    double speed_of_free_fall_m_s() const;
    /// Low-speed drag at a depth over that of the long tube.
    double share(double depth_m) const;
    double share_slope_per_m(double depth_m) const;
};

FallSetup fall_setup(const DragCurve& curve, const EndEffect& ends, double moment_A_m2, double conductivity_S_m,
                     double mass_kg, double tube_length_m);

struct Instant {
    double time_s, depth_m, speed_m_s;
    double drag_N;
};

struct Fall {
    double time_s = 0;
    double exit_speed_m_s = 0;
    std::optional<double> terminal_speed_m_s; // empty: the drag never holds the weight
    std::optional<double> unstable_speed_m_s; // above it the magnet would run away; filled with the path, below 1e6 m/s
    double heat_J = 0;                        // left in the wall
    std::optional<double> currents_s;         // where the currents were followed in time: what that adds to the time
    bool turns_back = false;                  // they throw the magnet back for moments
    std::vector<Instant> path;                // filled on request only
    std::string fault;                        // why this can't be; empty: sound
};

/// A fall that breaks a law names it in `fault`: no time, quicker than free fall, faster out than free fall, heat
/// below zero or apart from the work on the wall by more than 1e-4 of the height's.
Fall fall(const FallSetup& setup, bool with_path = false);

/// The same laws for a fall worked out in another way.
Fall checked_fall(const FallSetup& setup, Fall fall, double work_J);

} // namespace pourbook::eddy

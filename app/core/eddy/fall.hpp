// The fall of a magnet through a finite tube: released at rest with its centre at the mouth, until its centre leaves.
//
// M dv/dt = M g - F(v) share(z), F the drag of the long tube at any speed, share(z) that of both ends (end_effect.hpp).
// Integrated by Dormand and Prince's fifth-order method with step control (J. Comput. Appl. Math. 6, 19, 1980; relative
// tolerance 1e-7); where the magnet has settled, the uniform stretch is one division, and a slow magnet is followed at
// its local terminal speed, v = v0 (1 - v0 v0'/g), whose error is below 1e-5 of the whole time. Air drag, rubbing, tilt
// and eccentric travel are left out.
#pragma once

#include "core/eddy/drag_curve.hpp"
#include "core/eddy/end_effect.hpp"

#include <vector>

namespace pourbook::eddy {

/// One magnet and tube with everything that the motion needs. The curve and the ends must outlive it.
struct FallSetup {
    const DragCurve* curve = nullptr;
    const EndEffect* ends = nullptr;
    double force_scale_N = 0; // mu0 m^2 / (2 pi^2 a^4)
    double u_per_speed = 0;   // mu0 sigma a, s/m
    double mass_kg = 0;
    double tube_length_m = 0;
    double gravity_m_s2 = standard_gravity_m_s2;

    double drag_N(double speed_m_s) const { return force_scale_N * curve->force(u_per_speed * speed_m_s); }
    double coefficient_N_s_m() const { return force_scale_N * u_per_speed * curve->low_speed(); }
};

FallSetup fall_setup(const DragCurve& curve, const EndEffect& ends, double moment_A_m2, double conductivity_S_m,
                     double mass_kg, double tube_length_m);

struct Instant {
    double time_s, depth_m, speed_m_s;
};

struct Fall {
    double time_s = 0;
    double exit_speed_m_s = 0;
    std::optional<double> terminal_speed_m_s; // empty: the drag never holds the weight
    std::optional<double> unstable_speed_m_s; // above it the magnet would run away; filled with the path, below 1e6 m/s
    double heat_J = 0;                        // left in the wall
    std::vector<Instant> path;                // filled on request only
};

Fall fall(const FallSetup& setup, bool with_path = false);

} // namespace pourbook::eddy

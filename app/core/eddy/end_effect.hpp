// How much of the full drag acts while the magnet is near an end of the tube.
//
// At low speed each ring of the wall acts by itself, so a cut tube simply lacks rings: with w(z) = int_a^b r B_r(r,z)^2
// dr and the magnet's centre at depth s behind an end, the share is int_-inf^s w dz / int_-inf^inf w dz. B_r is the
// exact field of the magnet: closed form for a sphere, complete elliptic integrals for cylinder and ring (vector
// potential of a current loop; Jackson, Classical Electrodynamics, section 5.5). Two ends: the shares add, less one.
// Range: low speed. At higher speeds the share is used as a factor on the drag of the long tube; the currents then no
// longer act independently within about a bore radius of the end, and the relative error of the share there is of the
// order of 1 - (drag relative to the linear law). Interpolation error below 1e-5.
#pragma once

#include "core/eddy/tube_drag.hpp"

#include <vector>

namespace pourbook::eddy {

/// Azimuthal potential of a loop of radius R that carries 1 A, over mu0; R and r above zero, not on the loop itself.
double loop_potential(double loop_radius_m, double r_m, double z_m);

/// Radial field over Br outside the magnet, recoil permeability 1; z from the magnet's centre. Needs r >
/// source_radius_m().
double radial_field_over_remanence(const Magnet& magnet, double r_m, double z_m);

class EndEffect {
public:
    EndEffect(const Magnet& magnet, const Bore& bore);

    /// Share of the full drag with the centre at depth s behind one end of a long tube; s < 0: outside.
    double share(double depth_m) const;
    double slope_per_m(double depth_m) const;
    /// Behind this depth the share is 1 to within 1e-4.
    double reach_m() const { return reach_; }
    /// int w dz over all z, for Br = 1: the low-speed coefficient is 2 pi sigma Br^2 times this.
    double whole() const { return whole_; }

private:
    struct Knot {
        double z, inside, density; // share between 0 and z, and its slope
    };
    const Knot* below(double z) const;

    std::vector<Knot> knots_;
    double whole_ = 0, reach_ = 0;
};

} // namespace pourbook::eddy

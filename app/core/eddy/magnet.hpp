// Axially magnetised permanent magnets on the axis of a tube: shape, moment and the source they present to the tube.
//
// The magnetisation is uniform, M = Br/mu0 for a recoil permeability of 1. For another recoil permeability mu_r the
// mean magnetisation is M = (Br/mu0) / (1 + N (mu_r - 1)) with the magnetometric demagnetising factor N: exact for a
// sphere (N = 1/3), of first order in mu_r - 1 for the other shapes, whose magnetisation is then no longer quite
// uniform (Joseph, J. Appl. Phys. 37, 4639, 1966, for N; here from Nagaoka's coefficient and Fourier integrals).
// Against finite elements with mu_r = 1.05 this leaves up to 1 % of the drag out at low speed (the true drag is
// larger), and 1.2 % at the peak, where the magnet feels the induced field (tests/eddy/run_getdp.py).
#pragma once

#include "core/result.hpp"

namespace pourbook::eddy {

constexpr double vacuum_permeability = 1.25663706212e-6; // mu0, N/A^2 (CODATA 2018)
constexpr double standard_gravity_m_s2 = 9.80665;        // exact by convention (CGPM 1901)

enum class Shape { sphere, cylinder, ring };

struct Magnet {
    Shape shape = Shape::cylinder;
    double outer_radius_m = 0;
    double inner_radius_m = 0; // ring only
    double length_m = 0;       // along the axis; the diameter for a sphere

    double volume_m3() const;
    /// Radius on which the sources lie: 0 for a sphere, which is exactly a dipole outside itself.
    double source_radius_m() const { return shape == Shape::sphere ? 0 : outer_radius_m; }
    /// Half the distance over which the sources extend along the axis.
    double half_length_m() const { return shape == Shape::sphere ? 0 : length_m / 2; }
};

/// Errors: refused, for lengths that are not positive, a ring without wall, or a longest size (radii, wall, length) of
/// more than a thousand times the shortest.
Result<Magnet> checked(const Magnet& magnet);

/// exp(-k r) S(k), r = source_radius_m(): axial spectrum of the source relative to a dipole of the same moment, S(0)
/// = 1. Cylinder: S = [2 I1(kR)/(kR)] sin(kL/2)/(kL/2); ring: difference of two cylinders. k > 0 in 1/m.
double scaled_form_factor(const Magnet& magnet, double k_per_m);

/// Magnetometric demagnetising factor along the axis, 0..1; error below 1e-6.
double demagnetising_factor(const Magnet& magnet);

/// Dipole moment of a magnet of remanence Br (T).
double moment_A_m2(const Magnet& magnet, double remanence_T, double recoil_permeability);

/// Field on the axis at a distance outside the pole face of a magnet with recoil permeability 1, as a fraction of Br.
double axial_field_over_remanence(const Magnet& magnet, double distance_m);

} // namespace pourbook::eddy

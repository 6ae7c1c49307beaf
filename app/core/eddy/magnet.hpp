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

enum class Shape { sphere, cylinder, ring, cube };

/// Equal magnets on one axis, one behind the other; the gaps are spacers that do nothing.
struct Stack {
    int pieces = 1;
    double gap_m = 0;
    bool alternating = false; // each opposed to its neighbour; else all alike
};

/// One magnet, or a stack of equal ones with the sizes of one. Fields, spectra and moments are sums over the pieces.
struct Magnet {
    Shape shape = Shape::cylinder;
    double outer_radius_m = 0; // a cube: half the diagonal of a face
    double inner_radius_m = 0; // ring only
    double length_m = 0;       // along the axis; the diameter for a sphere
    Stack stack{};

    double volume_m3() const; // of all pieces
    double pitch_m() const { return length_m + stack.gap_m; }
    double whole_length_m() const { return length_m + (stack.pieces - 1) * pitch_m(); }
    double place_m(int piece) const { return (piece - (stack.pieces - 1) / 2.0) * pitch_m(); } // of its middle
    double sign(int piece) const { return stack.alternating && piece % 2 ? -1 : 1; }
    /// Radius on which the sources lie: 0 for a sphere, which is exactly a dipole outside itself.
    double source_radius_m() const { return shape == Shape::sphere ? 0 : outer_radius_m; }
    /// Half the distance over which the sources extend along the axis.
    double half_length_m() const { return (whole_length_m() - (shape == Shape::sphere ? length_m : 0)) / 2; }
};

/// Errors: refused, for lengths that are not positive, a ring without wall, a stack of more than 20, or a longest size
/// (radii, wall, length) of more than a thousand times the shortest.
Result<Magnet> checked(const Magnet& magnet);

/// What is alike all round of a cube (its axis along the tube): the mean of cylinders through the points of its side
/// faces. What its corners add to the drag is left out: 0.7 % where they nearly touch the wall, 0.1 % at nine tenths.
constexpr int cube_cylinders = 8;
struct WeightedRadius {
    double radius_m, weight; // weights sum to one
};
WeightedRadius cube_cylinder(const Magnet& cube, int which);

/// What the current sheets of one piece that isn't a sphere do together; of(radius_m) is what one of them does.
template <class Of> double over_sheets(const Magnet& piece, Of of) {
    if (piece.shape == Shape::cylinder) return of(piece.outer_radius_m);
    if (piece.shape == Shape::ring) return of(piece.outer_radius_m) - of(piece.inner_radius_m);
    double sum = 0;
    for (int i = 0; i < cube_cylinders; ++i) {
        const auto [radius_m, weight] = cube_cylinder(piece, i);
        sum += weight * of(radius_m);
    }
    return sum;
}

/// exp(-k r) S(k), r = source_radius_m(): size of the axial spectrum of the source relative to a dipole of the moment
/// that all pieces have side by side, S(0) = 1 where they are alike. Stack: |sum s_i exp(i k z_i)| over their number,
/// times that of one. Cylinder: S = [2 I1(kR)/(kR)] sin(kL/2)/(kL/2); ring: difference of two cylinders. k > 0 in 1/m.
double scaled_form_factor(const Magnet& magnet, double k_per_m);

/// Magnetometric demagnetising factor along the axis, 0..1; error below 1e-6. Of a stack: that of one piece alone.
double demagnetising_factor(const Magnet& magnet);

/// Dipole moment of a magnet of remanence Br (T); of a stack: the sum without signs, which the spectrum knows.
double moment_A_m2(const Magnet& magnet, double remanence_T, double recoil_permeability);

/// Field on the axis at a distance outside the pole face of a magnet with recoil permeability 1, as a fraction of Br.
double axial_field_over_remanence(const Magnet& magnet, double distance_m);

} // namespace pourbook::eddy

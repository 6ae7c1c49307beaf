// The wall of a finite tube as coaxial rings, and the patterns of current in it that fade each at a rate of its own.
//
// Rings of rectangular section carry uniform currents: L dI/dt + R I = -g(z) v, L the full inductance matrix (two
// loops, Maxwell's formula with complete elliptic integrals, at the geometric mean distance of the two sections, which
// is exact in the leading logarithm; Grover, Inductance Calculations, 1946, chapter 3, from memory), R their
// resistances, g = 2 pi r B_r the magnet's radial field averaged over the section. With y = sqrt(R) I the eigenvectors
// of R^-1/2 L R^-1/2 are currents apart from each other: tau_k dy_k/dt + y_k = -G_k(z) v, force on the magnet sum G_k
// y_k. Time constants are proportional to the conductivity, so that one set serves every metal of a geometry. Range:
// coaxial, wall non-magnetic, rings of about a quarter of the bore radius along the tube.
#pragma once

#include "core/eddy/wall_parts.hpp"

#include <vector>

namespace pourbook::eddy {

/// Inductance in henry of two coaxial rings of rectangular section (of one with itself too).
struct RingSection {
    double radius_m, place_m, thickness_m, height_m; // middle radius and place along the axis
};
double mutual_inductance_H(const RingSection& one, const RingSection& other);

/// r B_r averaged over a section, for Br = 1, with the magnet's centre that far behind it.
double mean_coupling(const Magnet& magnet, const RingSection& ring, double apart_m);
/// Resistance at 1 S/m.
double unit_resistance(const RingSection& ring);
/// Layers in which a wall is to be cut.
std::size_t layers_across(const Bore& bore, double finer);

constexpr double outside_bores = 3; // bore radii that the table of couplings reaches beyond the ends

class WallModes {
public:
    /// `finer` multiplies the number of rings along and across.
    WallModes(const Magnet& magnet, const Bore& bore, double tube_length_m, double finer = 1);
    /// Of a wall of several parts, the time constants over the conductivity of the tube itself.
    WallModes(const Magnet& magnet, const std::vector<WallPart>& parts, double finer = 1);

    std::size_t count() const { return seconds_per_S_m_.size(); }
    /// Time constant of pattern k over the conductivity.
    const std::vector<double>& seconds_per_S_m() const { return seconds_per_S_m_; }
    /// Couplings of all patterns with the magnet's centre at a depth, up to a common factor; 0 far outside. A tube of
    /// slightly another length is taken as this one stretched.
    void couplings(double depth_m, double tube_length_m, std::vector<double>& out) const;

private:
    std::vector<double> made_modes(const std::vector<std::vector<double>>& lines, std::size_t layers);
    void make_table(const std::vector<std::vector<double>>& fields, const std::vector<double>& modes);

    double length_ = 0, grid_ = 0;                       // of the table's depths
    std::size_t lengths_ = 0, outside_ = 0, places_ = 0; // depths before the mouth, and all
    std::vector<double> seconds_per_S_m_;
    std::vector<double> table_; // couplings by depth
};

} // namespace pourbook::eddy

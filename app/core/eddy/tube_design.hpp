// Wall and length of a tube of given bore for one magnet: the lightest tube in which the magnet falls for a wanted
// time, and the tube of a limited mass in which it falls longest.
//
// Of all walls w and lengths L within the limits. At a given wall the time rises with the length, and at a given length
// with the wall; so the lightest tube lies on the line time(w, L) = wanted, the slowest on mass(w, L) = most or on a
// limit. Along that line the best wall is the least one where it gets worse from there, else it is found on a coarse
// grid and by golden section: while drag is linear in speed, drag per mass falls with the wall (a thin wall far from
// the magnet's ends: time = mu0^2 m^2 sigma M_tube / (rho M_magnet g) times a factor of the bore alone), so the best
// wall is mostly the least that the limits leave. Falls by fall.hpp with the curves of WallFamily, currents at once:
// within 1e-3 of DropModel's in tubes that are no shorter than a few bore radii; what is built is to be worked out with
// its own model.
#pragma once

#include "core/eddy/wall_family.hpp"

#include <optional>

namespace pourbook::eddy {

struct TubeLimits {
    double least_wall_m = 0, most_wall_m = 0;
    double shortest_m = 0, longest_m = 0;
    double most_mass_kg = 0; // of the tube; infinity: any
};

struct TubeFound {
    double wall_m = 0, length_m = 0;
    double time_s = 0, mass_kg = 0;
};

class TubeSearch {
public:
    /// The family must outlive it. Its magnet's slits and off-axis travel are heeded within WallFamily's range.
    TubeSearch(const WallFamily& family, double bore_radius_m, double conductivity_S_m, double density_kg_m3);

    double mass_kg(double wall_m, double length_m) const;
    double time_s(double wall_m, double length_m) const;

    /// The lightest with at least this time; empty where no tube within the limits (the mass too) reaches it.
    std::optional<TubeFound> lightest(double time_s, const TubeLimits& limits) const;
    /// The slowest within the limits; empty where the mass is too small for the least wall and the shortest length.
    std::optional<TubeFound> slowest(const TubeLimits& limits) const;

private:
    /// Length for a time at a wall, from `from_m` on; empty above `longest_m`.
    std::optional<double> length_for(double time_s, double wall_m, const TubeLimits& limits) const;
    double wall_for_mass(double mass_kg, double length_m) const;
    TubeFound found(double wall_m, double length_m) const;

    const WallFamily& family_;
    double bore_, conductivity_, density_;
};

} // namespace pourbook::eddy

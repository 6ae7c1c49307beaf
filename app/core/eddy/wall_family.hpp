// Falls of one magnet through tubes of one bore and length and any wall, from few drag curves.
//
// The wall is given by its cross-section A. The low-speed drag G(A) is interpolated on a grid of even steps in ln A
// (cubic, relative error below 1e-5); the fall itself is worked out with the curves of the two grid walls next to A,
// each scaled to G(A), and ln(time) blended between them: while drag is linear in speed that is exact, and the shape of
// the curve changes little over one step. Relative difference from a fall with the wall's own curve: below 1e-3
// (tests/unit/eddy). In samples the cross-section moves freely and the outside diameter follows the bore.
// With slits or off the axis the drag is multiplied by the path factor at the wall in question (drop_model.hpp).
// Curves are made when first needed and kept; not for use by two threads at once.
#pragma once

#include "core/eddy/fall_times.hpp"

#include <map>
#include <vector>

namespace pourbook::eddy {

class WallFamily {
public:
    /// Checked inputs; their outside diameter is not used.
    explicit WallFamily(DropInputs inputs);

    double outside_radius_m(double wall_area_m2) const;
    /// Errors: refused (see eddy::path_factor), such as a wall too thick for slits.
    Result<double> path_factor(double wall_area_m2) const;
    /// With the curve of the grid wall below; the path factor must be known.
    FallSetup setup(double conductivity_S_m, double wall_area_m2) const;
    /// NaN where the path factor is not known.
    double fall_time_s(double conductivity_S_m, double wall_area_m2) const;
    /// Sample i has conductivities_S_m[i], wall_areas_m2[i] and the draws of magnet and tube; `near_m2` is the wall
    /// whose curves are used.
    std::vector<double> fall_times_s(double near_m2, const std::vector<double>& conductivities_S_m,
                                     const std::vector<double>& wall_areas_m2, Draws& draws) const;

private:
    struct Between {
        int below;
        double share; // of the grid wall above
    };
    Between place(double wall_area_m2) const;
    FallSetup on_grid(int grid, double conductivity_S_m, double wall_area_m2, double path_factor) const;
    DropInputs whole_at(int grid) const;
    const DropModel& model(int grid) const;
    double ln_drag_on_grid(int grid) const;
    double ln_drag(double wall_area_m2) const;

    DropInputs inputs_, whole_; // the second: without slits, on the axis
    mutable std::map<int, DropModel> models_;
    mutable std::map<int, double> ln_drags_;
};

} // namespace pourbook::eddy

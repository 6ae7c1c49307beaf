// A wall of several parts: a liner or a sleeve of another metal, a tube joined below, a taper, a stretch with slits.
//
// At low speed the currents of a magnet on the axis run in rings that do not feel each other, so that what the parts
// brake adds: k(z) = sum_p sigma_p share_p(z) whole_p (end_effect.hpp), gaps and insulation between them being of no
// matter. A taper is taken as steps. Range: low speed, as end_effect.hpp; where currents need time that counts, rings
// of all parts together (wall_modes.hpp).
#pragma once

#include "core/eddy/end_effect.hpp"

#include <vector>

namespace pourbook::eddy {

/// The tube itself, or what is put to it.
struct WallPart {
    Bore bore;
    double from_m = 0, to_m = 0; // below the mouth
    double conductivity = 1;     // over that of the tube itself; where slits are, times what they leave
    std::size_t piece = 0;       // to which it belongs: 0 the tube itself, the steps of a taper alike
};

/// A cone between two ends as cylinders one below the other: as many as leave 2e-4 of the time of a slow fall, at most
/// 24 (which leave 1e-3 of it where the drag at one end is thirty times that at the other).
std::vector<WallPart> tapered(const Magnet& magnet, const Bore& upper, const Bore& lower, double length_m);

/// A piece of the wall as it is seen: a cylinder or a cone.
struct WallOutline {
    Bore upper, lower;
    double from_m = 0, to_m = 0;
    std::size_t piece = 0;

    bool tapers() const {
        return upper.inner_radius_m != lower.inner_radius_m || upper.outer_radius_m != lower.outer_radius_m;
    }
};

/// Of each piece, whose steps follow each other.
std::vector<WallOutline> outlines(const std::vector<WallPart>& parts);

class WallProfile {
public:
    /// Checked; the first part begins at the mouth.
    WallProfile(const Magnet& magnet, std::vector<WallPart> parts);

    /// Drag of a long tube like the upper end over that of `alone`.
    double level(const EndEffect& alone) const { return upper_end_ / alone.whole(); }
    /// Drag at a depth over that of a long tube like the upper end, and its slope: a table between whose depths it
    /// runs as a cubic, 1e-5 at most from the sum over the parts.
    double share(double depth_m) const;
    double slope_per_m(double depth_m) const;
    /// Drag of a long tube like the lower end over that of one like the upper.
    double lower_end() const { return lower_end_ / upper_end_; }
    /// Every part is as long as the tube: one terminal speed.
    bool even() const;
    /// Of the braking summed over the way, and so of the time of a slow fall, the share of each piece.
    std::vector<double> weights(double from_m, double to_m) const;

    double length_m() const { return length_; }
    const std::vector<WallPart>& parts() const { return parts_; }

private:
    struct Knot {
        double z, share, slope;
    };
    Knot summed(double depth_m) const;
    void add_knots(const Knot& from, const Knot& to, int halvings);
    const Knot* above(double depth_m) const;

    std::vector<WallPart> parts_;
    std::vector<EndEffect> ends_; // of a long tube like each part
    std::vector<Knot> knots_;
    double length_ = 0, upper_end_ = 0, lower_end_ = 0;
};

} // namespace pourbook::eddy

// How thick a body is from place to place: thinnest wall, largest ball inside and where it sits, number of bodies.
//
// Rays from points on the surface, straight inward, to the wall across: their length is the local wall. The thinnest
// wall is the length that one part in two hundred of the surface falls short of (a lone sharp edge does not count, a
// fin does). The largest ball: the middles of the longest rays, each moved to where the nearest wall is farthest.
// Points: middles of triangles, each weighted by its area, at most `most_points` of them; cost points x triangles.
#pragma once

#include "core/casting/mesh.hpp"

#include <optional>

namespace pourbook::casting {

struct Thickness {
    double thinnest = 0;    // in the file's unit
    double ball_radius = 0; // the largest inside
    std::array<double, 3> ball_at{};
};

/// A sound closed mesh, turned outward. Empty where no ray met a wall.
std::optional<Thickness> thickness_of(const Mesh& mesh, std::size_t most_points = 1500);

/// Parts of the surface that share no corner (an inner void counts as one).
std::size_t bodies_in(const Mesh& mesh);

} // namespace pourbook::casting

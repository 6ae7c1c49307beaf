// A piece of a tube's wall in section: both its sides, and the bore between them.
#pragma once

#include "charts/scene.hpp"
#include "core/eddy/wall_parts.hpp"

namespace pourbook {

/// Where the tube's mouth stands on its axis, and points a metre across and along it.
struct WallPlace {
    Spot mouth;
    double across = 1, along = 1;
};

void add_wall(Scene& scene, const eddy::WallOutline& outline, const WallPlace& place, Colour colour);
void add_bore(Scene& scene, const eddy::WallOutline& outline, const WallPlace& place, Colour colour);

} // namespace pourbook

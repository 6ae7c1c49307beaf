// A magnet in section, its poles coloured and lettered: one piece or a stack, drawn to scale.
#pragma once

#include "charts/scene.hpp"
#include "core/eddy/magnet.hpp"

namespace pourbook {

/// The axis stands upright through `centre`, the first piece's north pole up. Letters where they fit.
void add_magnet(Scene& scene, const eddy::Magnet& magnet, Spot centre, double points_per_m);

} // namespace pourbook

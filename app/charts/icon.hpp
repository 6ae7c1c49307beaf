// The program's own sign: a magnet that falls in a tube, in section, with the currents it makes in the walls.
#pragma once

#include "charts/scene.hpp"

namespace pourbook {

/// A square of this many points a side; the ground round the sign is see-through.
Scene icon(double size);

} // namespace pourbook

// A part as a small section to scale, without words: what a form of sizes stands beside.
#pragma once

#include "charts/canvas.hpp"
#include "core/casting/shape.hpp"

namespace pourbook {

/// The axis upright; a plate lies as it is seen from above. `poles`: a magnet, its upper half the north pole.
Scene part_sketch(const casting::Shape& shape, bool poles, const Canvas& canvas);

} // namespace pourbook

// A magnet in its tube, drawn to scale: the whole tube small, and a section around the magnet large, with dimensions,
// poles and wall, of several parts each in the colour of its piece. What was shortened says so.
#pragma once

#include "charts/canvas.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/say/shown.hpp"

namespace pourbook {

Scene setup_drawing(const DropSetup& setup, UnitSystem units, const Canvas& canvas);

} // namespace pourbook

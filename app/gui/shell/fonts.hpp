// The letters: Inter, drawn by FreeType, with DejaVu Sans for arrows, signs of arithmetic and plain shapes.
#pragma once

#include "core/result.hpp"
#include "gui/widgets/ui.hpp"

namespace pourbook {

/// Builds the atlas of the current ImGui context for this scale. Errors: no_value, naming the missing file and its
/// package.
Result<Fonts> build_fonts(float scale);

} // namespace pourbook

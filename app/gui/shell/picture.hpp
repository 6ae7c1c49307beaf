// What is on screen, as a PNG file.
#pragma once

#include "core/result.hpp"

#include <optional>
#include <string>

namespace pourbook {

/// Reads the back buffer of the current OpenGL context: call after drawing, before the buffers are swapped. The file is
/// written whole or not at all. Errors: file.
std::optional<Problem> save_picture(const std::string& file, int width, int height);

} // namespace pourbook

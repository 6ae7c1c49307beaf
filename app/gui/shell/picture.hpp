// What is on screen, as a PNG file.
#pragma once

#include <string>

namespace pourbook {

/// Reads the back buffer of the current OpenGL context: call after drawing, before the buffers are swapped. False on
/// failure.
bool save_picture(const std::string& file, int width, int height);

} // namespace pourbook

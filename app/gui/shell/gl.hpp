// The few OpenGL calls the shell makes itself, fetched at run time: nothing links libGL.
#pragma once

namespace pourbook::gl {

void viewport(int width, int height);
void clear(float red, float green, float blue);
/// Rows from the bottom up, four bytes a pixel.
void read_pixels(int width, int height, void* rgba);

/// A texture of these pixels (rows from the top, four bytes each) in place of `old`; 0: a new one.
unsigned texture(unsigned old, int width, int height, const void* rgba);

} // namespace pourbook::gl

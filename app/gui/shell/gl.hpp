// The few OpenGL calls the shell makes itself, fetched at run time: nothing links libGL.
#pragma once

namespace pourbook::gl {

void viewport(int width, int height);
void clear(float red, float green, float blue);
/// Rows from the bottom up, four bytes a pixel.
void read_pixels(int width, int height, void* rgba);

} // namespace pourbook::gl

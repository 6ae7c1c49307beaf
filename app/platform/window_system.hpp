// What differs about windows where the window library (GLFW) is the same: which OpenGL, the display's scale, the
// clipboard.
#pragma once

#include <string>

struct GLFWwindow;

namespace pourbook::platform {

/// Asks the next window for the OpenGL that the program draws with; the first line of its shaders.
void wish_for_opengl(bool follow_display);
const char* shader_version();

/// Why the window library failed last; empty where it does not say.
std::string window_fault();

/// Pixels for each point of the display the window is on.
double content_scale(GLFWwindow* window);

/// No smaller than this, where the display is large enough for it.
void set_smallest(GLFWwindow* window, int width, int height);

/// Text on the clipboard. False (and null): the window library does it itself.
bool copy_text(const char* text);
const char* pasted_text();
bool has_own_clipboard();

} // namespace pourbook::platform

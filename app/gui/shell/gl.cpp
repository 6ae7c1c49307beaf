#include "gui/shell/gl.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace pourbook::gl {
namespace {

constexpr unsigned colour_bit = 0x4000, rgba_format = 0x1908, unsigned_byte = 0x1401, pack_alignment = 0x0D05;

template <class Function> Function fetch(const char* name) {
    return reinterpret_cast<Function>(glfwGetProcAddress(name));
}

} // namespace

void viewport(int width, int height) {
    static const auto call = fetch<void (*)(int, int, int, int)>("glViewport");
    call(0, 0, width, height);
}

void clear(float red, float green, float blue) {
    static const auto set = fetch<void (*)(float, float, float, float)>("glClearColor");
    static const auto call = fetch<void (*)(unsigned)>("glClear");
    set(red, green, blue, 1);
    call(colour_bit);
}

void read_pixels(int width, int height, void* rgba) {
    static const auto store = fetch<void (*)(unsigned, int)>("glPixelStorei");
    static const auto call = fetch<void (*)(int, int, int, int, unsigned, unsigned, void*)>("glReadPixels");
    store(pack_alignment, 1);
    call(0, 0, width, height, rgba_format, unsigned_byte, rgba);
}

} // namespace pourbook::gl

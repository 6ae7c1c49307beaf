#include "gui/shell/gl.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <initializer_list>

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

unsigned texture(unsigned old, int width, int height, const void* rgba) {
    constexpr unsigned flat = 0x0DE1, smaller = 0x2801, larger = 0x2800, linear = 0x2601, unpack_row = 0x0CF2;
    static const auto make = fetch<void (*)(int, unsigned*)>("glGenTextures");
    static const auto bind = fetch<void (*)(unsigned, unsigned)>("glBindTexture");
    static const auto set = fetch<void (*)(unsigned, unsigned, int)>("glTexParameteri");
    static const auto store = fetch<void (*)(unsigned, int)>("glPixelStorei");
    static const auto fill =
        fetch<void (*)(unsigned, int, int, int, int, int, unsigned, unsigned, const void*)>("glTexImage2D");
    if (!old) make(1, &old);
    bind(flat, old);
    for (const unsigned which : {smaller, larger}) set(flat, which, static_cast<int>(linear));
    store(unpack_row, 0);
    fill(flat, 0, static_cast<int>(rgba_format), width, height, 0, rgba_format, unsigned_byte, rgba);
    return old;
}

} // namespace pourbook::gl

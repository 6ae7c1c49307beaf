// The page's canvas is the window; its width is the page's (app/web/page.js).
#include "platform/window_system.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <emscripten.h>
#include <emscripten/html5.h>

#include <cstdlib>

EM_JS(void, put_on_clipboard, (const char* text), {
    const words = UTF8ToString(text);
    Module.pourbookPasted = words;
    if (navigator.clipboard) navigator.clipboard.writeText(words).catch(function(){});
});

EM_JS(char*, from_clipboard, (), {
    const words = Module.pourbookPasted || "";
    const size = lengthBytesUTF8(words) + 1;
    const text = _malloc(size);
    stringToUTF8(words, text, size);
    return text;
});

namespace pourbook::platform {

void wish_for_opengl(bool) {
    glfwWindowHint(GLFW_CLIENT_API, GLFW_OPENGL_ES_API);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 0);
}

const char* shader_version() {
    return "#version 300 es";
}

std::string window_fault() {
    return "this browser shows no WebGL 2";
}

/// The canvas has a pixel for each of the display's; points are counted by the page.
double content_scale(GLFWwindow*) {
    return emscripten_get_device_pixel_ratio();
}

void set_smallest(GLFWwindow*, int, int) {}

bool copy_text(const char* text) {
    put_on_clipboard(text);
    return true;
}

const char* pasted_text() {
    static std::string kept;
    char* text = from_clipboard();
    kept = text;
    std::free(text);
    return kept.c_str();
}

bool has_own_clipboard() {
    return true;
}

} // namespace pourbook::platform

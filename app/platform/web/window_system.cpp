// The page's canvas is the window; its width is the page's (app/web/page.js).
#include "platform/window_system.hpp"

#include "platform/web/page_calls.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
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
    return page_pixel_ratio();
}

void set_smallest(GLFWwindow*, int, int) {}

bool copy_text(const char* text) {
    page_copy_text(text);
    return true;
}

const char* pasted_text() {
    static std::string kept;
    kept = taken(page_pasted_text());
    return kept.c_str();
}

bool has_own_clipboard() {
    return true;
}

} // namespace pourbook::platform

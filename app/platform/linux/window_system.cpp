#include "platform/window_system.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>

namespace pourbook::platform {

void wish_for_opengl(bool follow_display) {
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, follow_display ? GLFW_TRUE : GLFW_FALSE);
}

const char* shader_version() {
    return "#version 330 core";
}

std::string window_fault() {
    const char* why = nullptr;
    glfwGetError(&why);
    return why ? why : "";
}

double content_scale(GLFWwindow* window) {
    float x = 1, y = 1;
    glfwGetWindowContentScale(window, &x, &y);
    return static_cast<double>(x);
}

void set_smallest(GLFWwindow* window, int width, int height) {
    int x = 0, y = 0, room_width = 0, room_height = 0, now_width = 0, now_height = 0;
    if (GLFWmonitor* monitor = glfwGetPrimaryMonitor())
        glfwGetMonitorWorkarea(monitor, &x, &y, &room_width, &room_height);
    glfwGetWindowSize(window, &now_width, &now_height);
    glfwSetWindowSizeLimits(window, std::min({width, room_width, now_width}),
                            std::min({height, room_height, now_height}), GLFW_DONT_CARE, GLFW_DONT_CARE);
}

bool copy_text(const char*) {
    return false;
}

const char* pasted_text() {
    return nullptr;
}

bool has_own_clipboard() {
    return false;
}

} // namespace pourbook::platform

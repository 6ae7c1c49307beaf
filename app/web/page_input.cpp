// What the page tells the window beside what the window library hears itself (called by page.js).
#include "gui/shell/glfw_window.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>

/// Pixels of the canvas.
extern "C" void pourbook_resize(int width, int height) {
    if (GLFWwindow* window = glfwGetCurrentContext()) glfwSetWindowSize(window, width, height);
}

/// 1 while a field has the cursor: a phone then opens its keyboard.
extern "C" int pourbook_wants_text() {
    return ImGui::GetCurrentContext() && ImGui::GetIO().WantTextInput ? 1 : 0;
}

extern "C" void pourbook_typed(const char* text) {
    if (ImGui::GetCurrentContext()) ImGui::GetIO().AddInputCharactersUTF8(text);
}

/// For a test that has asked something: the next frame is drawn.
extern "C" void pourbook_wake() {
    GLFWwindow* window = glfwGetCurrentContext();
    if (window) static_cast<pourbook::GlfwWindow*>(glfwGetWindowUserPointer(window))->wake();
}

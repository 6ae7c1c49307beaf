// What the page tells the window beside what the window library hears itself (called by page.js).
#include "gui/shell/glfw_window.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>

/// The next frame is drawn: something has come that the window library does not hear of.
extern "C" void pourbook_wake() {
    GLFWwindow* window = glfwGetCurrentContext();
    if (window) static_cast<pourbook::GlfwWindow*>(glfwGetWindowUserPointer(window))->wake();
}

/// Pixels of the canvas.
extern "C" void pourbook_resize(int width, int height) {
    if (GLFWwindow* window = glfwGetCurrentContext()) glfwSetWindowSize(window, width, height);
}

/// 1 while a field has the cursor: a phone then opens its keyboard.
extern "C" int pourbook_wants_text() {
    return ImGui::GetCurrentContext() && ImGui::GetIO().WantTextInput ? 1 : 0;
}

extern "C" void pourbook_typed(const char* text) {
    if (!ImGui::GetCurrentContext()) return;
    ImGui::GetIO().AddInputCharactersUTF8(text);
    pourbook_wake();
}

/// Notches, those to the left and up positive.
extern "C" void pourbook_wheel(double across, double up) {
    if (!ImGui::GetCurrentContext()) return;
    ImGui::GetIO().MouseWheelH += static_cast<float>(across);
    ImGui::GetIO().MouseWheel += static_cast<float>(up);
    pourbook_wake();
}

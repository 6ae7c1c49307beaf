// The smallest program of Dear ImGui and GLFW: one window, one line of text, drawn on events. A line on standard input
// is answered after the next whole frame, as the window's test socket does. The benchmark of the window measures
// against it.
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <atomic>
#include <iostream>
#include <string>
#include <thread>

namespace {

std::atomic<int> asked = 0;
std::atomic<bool> ended = false;

void read_questions() {
    for (std::string line; std::getline(std::cin, line);) {
        ++asked;
        glfwPostEmptyEvent();
    }
    ended = true;
    glfwPostEmptyEvent();
}

void draw(GLFWwindow* window) {
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
    ImGui::Begin("smallest", nullptr, ImGuiWindowFlags_NoDecoration);
    ImGui::TextUnformatted("one line of text");
    ImGui::End();
    ImGui::Render();
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(window);
}

} // namespace

int main() {
    if (!glfwInit()) return 1;
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    GLFWwindow* window = glfwCreateWindow(1440, 900, "smallest", nullptr, nullptr);
    if (!window) return 1;
    glfwMakeContextCurrent(window);
    glfwSwapInterval(1);
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui_ImplGlfw_InitForOpenGL(window, true);
    ImGui_ImplOpenGL3_Init("#version 330 core");
    std::thread reader(read_questions);
    for (int answered = -1; !ended; glfwWaitEventsTimeout(30)) {
        draw(window);
        for (; answered < asked; ++answered) std::cout << "frame" << std::endl;
    }
    reader.join();
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
    glfwTerminate();
    return 0;
}

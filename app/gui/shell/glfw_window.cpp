#include "gui/shell/glfw_window.hpp"

#include "gui/actions/actions.hpp"
#include "platform/window_system.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace pourbook {
namespace {

static_assert(keys::f1 == GLFW_KEY_F1 && 'F' == GLFW_KEY_F && 'Z' == GLFW_KEY_Z);

Problem failure(const std::string& what) {
    const std::string why = platform::window_fault();
    return {Problem::Kind::refused, what + (why.empty() ? "" : ": " + why), 0};
}

template <class... Arguments> void happened(GLFWwindow* window, Arguments...) {
    static_cast<GlfwWindow*>(glfwGetWindowUserPointer(window))->wake();
}

} // namespace

Result<std::unique_ptr<GlfwWindow>> GlfwWindow::open(const std::string& title, const Wish& wish) {
    glfwSetErrorCallback(nullptr);
    if (!glfwInit()) return failure("no display can be reached");
    platform::wish_for_opengl(wish.follow_display);
    glfwWindowHint(GLFW_VISIBLE, wish.visible ? GLFW_TRUE : GLFW_FALSE);
    GLFWwindow* window = glfwCreateWindow(wish.width, wish.height, title.c_str(), nullptr, nullptr);
    if (!window) {
        const Problem problem = failure("no window with OpenGL 3.3 can be opened");
        glfwTerminate();
        return problem;
    }
    glfwMakeContextCurrent(window);
    glfwSwapInterval(1);
    std::unique_ptr<GlfwWindow> owned(new GlfwWindow(window));
    owned->listen();
    return owned;
}

GlfwWindow::~GlfwWindow() {
    glfwDestroyWindow(window_);
    glfwTerminate();
}

/// Before ImGui's own callbacks are installed: those call these in turn.
void GlfwWindow::listen() {
    glfwSetWindowUserPointer(window_, this);
    glfwSetKeyCallback(window_, happened<int, int, int, int>);
    glfwSetCharCallback(window_, happened<unsigned>);
    glfwSetMouseButtonCallback(window_, happened<int, int, int>);
    glfwSetCursorPosCallback(window_, happened<double, double>);
    glfwSetCursorEnterCallback(window_, happened<int>);
    glfwSetScrollCallback(window_, happened<double, double>);
    glfwSetWindowFocusCallback(window_, happened<int>);
    glfwSetWindowRefreshCallback(window_, happened<>);
    glfwSetWindowCloseCallback(window_, happened<>);
    glfwSetFramebufferSizeCallback(window_, happened<int, int>);
}

void GlfwWindow::set_icon(const std::vector<std::uint8_t>& pixels, int side) {
    std::vector<std::uint8_t> own = pixels;
    const GLFWimage image{side, side, own.data()};
    glfwSetWindowIcon(window_, 1, &image);
}

void GlfwWindow::wake() {
    happened_ = true;
    glfwPostEmptyEvent();
}

bool GlfwWindow::wait(double seconds) {
    if (seconds > 0 && !happened_)
        glfwWaitEventsTimeout(seconds);
    else
        glfwPollEvents();
    return happened_.exchange(false);
}

} // namespace pourbook

#include "gui/shell/glfw_window.hpp"

#include "gui/actions/actions.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>

namespace pourbook {
namespace {

static_assert(keys::f1 == GLFW_KEY_F1 && 'F' == GLFW_KEY_F && 'Z' == GLFW_KEY_Z);

Problem failure(const std::string& what) {
    const char* why = nullptr;
    glfwGetError(&why);
    return {Problem::Kind::refused, what + (why ? std::string(": ") + why : ""), 0};
}

template <class... Arguments> void happened(GLFWwindow* window, Arguments...) {
    static_cast<GlfwWindow*>(glfwGetWindowUserPointer(window))->wake();
}

} // namespace

Result<std::unique_ptr<GlfwWindow>> GlfwWindow::open(const std::string& title, const Wish& wish) {
    glfwSetErrorCallback(nullptr);
    if (!glfwInit()) return failure("no display can be reached");
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_VISIBLE, wish.visible ? GLFW_TRUE : GLFW_FALSE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, wish.follow_display ? GLFW_TRUE : GLFW_FALSE);
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
    glfwSetWindowContentScaleCallback(window_, happened<float, float>);
}

void GlfwWindow::set_icon(const std::vector<std::uint8_t>& pixels, int side) {
    std::vector<std::uint8_t> own = pixels;
    const GLFWimage image{side, side, own.data()};
    glfwSetWindowIcon(window_, 1, &image);
}

void GlfwWindow::set_smallest(int width, int height) {
    int x = 0, y = 0, room_width = 0, room_height = 0, now_width = 0, now_height = 0;
    if (GLFWmonitor* monitor = glfwGetPrimaryMonitor())
        glfwGetMonitorWorkarea(monitor, &x, &y, &room_width, &room_height);
    glfwGetWindowSize(window_, &now_width, &now_height);
    glfwSetWindowSizeLimits(window_, std::min({width, room_width, now_width}),
                            std::min({height, room_height, now_height}), GLFW_DONT_CARE, GLFW_DONT_CARE);
}

double GlfwWindow::content_scale() const {
    float x = 1, y = 1;
    glfwGetWindowContentScale(window_, &x, &y);
    return static_cast<double>(x);
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

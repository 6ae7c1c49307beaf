// The operating system's window with an OpenGL 3.3 context, owned; and the flag that says "something happened, draw".
#pragma once

#include "core/result.hpp"

#include <atomic>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

struct GLFWwindow;

namespace pourbook {

class GlfwWindow {
public:
    struct Wish {
        int width, height;
        bool follow_display; // a dense display gets proportionally more pixels
        bool visible;
    };
    /// Errors: refused (no display, no OpenGL 3.3), with the system's reason.
    static Result<std::unique_ptr<GlfwWindow>> open(const std::string& title, const Wish& wish);
    ~GlfwWindow();
    GlfwWindow(const GlfwWindow&) = delete;
    GlfwWindow& operator=(const GlfwWindow&) = delete;

    /// A square picture as answers/picture's pixels_of gives it.
    void set_icon(const std::vector<std::uint8_t>& pixels, int side);

    GLFWwindow* handle() const { return window_; }

    /// From any thread: makes the loop draw again.
    void wake();
    /// Takes what happened; sleeps until something does, at most `seconds` (0: not at all). Returns whether something
    /// did.
    bool wait(double seconds);

private:
    explicit GlfwWindow(GLFWwindow* window) : window_(window) {}
    void listen();

    GLFWwindow* window_;
    std::atomic<bool> happened_ = true;
};

} // namespace pourbook

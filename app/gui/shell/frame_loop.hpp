// Draws while something happens and sleeps otherwise.
#pragma once

#include "gui/shell/glfw_window.hpp"
#include "gui/shell/test_socket.hpp"
#include "gui/widgets/ui.hpp"
#include "gui/window.hpp"

namespace pourbook {

class FrameLoop {
public:
    /// The window, the ImGui context and its fonts exist and outlive the loop.
    FrameLoop(GlfwWindow& window, Ui& ui, TestSocket& socket, const WindowOptions& options);

    /// Until the window is closed, or the picture is taken. Returns the exit code.
    int run();

private:
    void draw();
    void follow_scale();
    void keep_state();
    void answer_socket();
    double rest_seconds() const; // until the next frame, where nothing happens
    bool picture_due() const;

    GlfwWindow& window_;
    Ui& ui_;
    TestSocket& socket_;
    const WindowOptions& options_;
    int frames_due_ = 3;
    int frames_drawn_ = 0; // since the last answer arrived
    bool picture_taken_ = false;
    bool picture_failed_ = false;
    bool dark_ = true;
};

} // namespace pourbook

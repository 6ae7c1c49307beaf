// Draws while something happens and sleeps otherwise.
#pragma once

#include "gui/shell/glfw_window.hpp"
#include "gui/widgets/ui.hpp"
#include "gui/window.hpp"
#include "platform/test_socket.hpp"

#include <chrono>

namespace pourbook {

class FrameLoop {
public:
    /// The window, the ImGui context and its fonts exist and outlive the loop.
    FrameLoop(GlfwWindow& window, Ui& ui, platform::TestSocket& socket, const WindowOptions& options);

    /// Waits for something to happen and draws; false once the window is closed, or the picture is taken.
    bool frame();
    /// Of the program, after the last frame.
    int exit_code() const { return picture_failed_ ? 4 : 0; }

private:
    void draw();
    void follow_scale();
    void keep_state();
    void answer_socket();
    double rest_seconds() const; // until the next frame, where nothing happens
    bool picture_due() const;
    bool race_begins() const;

    GlfwWindow& window_;
    Ui& ui_;
    platform::TestSocket& socket_;
    const WindowOptions& options_;
    int frames_due_ = 3;
    int frames_drawn_ = 0; // since the last answer arrived
    bool picture_taken_ = false;
    bool picture_failed_ = false;
    bool dark_ = true;
    std::chrono::duration<double> own_work_{};       // of the frame drawn last, before it goes to the graphics card
    std::chrono::steady_clock::time_point drawn_at_; // a page is called oftener than there is something to draw
};

} // namespace pourbook

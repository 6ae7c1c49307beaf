#include "gui/shell/frame_loop.hpp"

#include "gui/panels/panels.hpp"
#include "gui/shell/fonts.hpp"
#include "gui/shell/gl.hpp"
#include "gui/shell/picture.hpp"
#include "gui/state/view_file.hpp"
#include "platform/window_system.hpp"

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <nlohmann/json.hpp>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace pourbook {
namespace {

constexpr int frames_after_event = 3; // layout and hovers settle one frame late
constexpr double blink_seconds = 0.5;
constexpr double frame_seconds = 1.0 / 60; // while something moves
constexpr double pause_seconds = 0.1;      // while the words about what the pointer rests on are waited for
constexpr double idle_seconds = 30;

std::string screen_as_json(const Ui& ui, GLFWwindow* window, int frame, double own_work_ms) {
    int x = 0, y = 0;
    glfwGetWindowPos(window, &x, &y);
    nlohmann::json items = nlohmann::json::object();
    for (const auto& [id, i] : ui.probe.items())
        items[id] = {{"x", x + i.x}, {"y", y + i.y}, {"width", i.width}, {"height", i.height}, {"text", i.text}};
    const nlohmann::json all = {{"frame", frame},
                                {"own_work_ms", own_work_ms},
                                {"working", ui.session.working()},
                                {"focused", ui.probe.tab.focused()},
                                {"stops", ui.probe.tab.stops()},
                                {"items", items}};
    return all.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

} // namespace

FrameLoop::FrameLoop(GlfwWindow& window, Ui& ui, platform::TestSocket& socket, const WindowOptions& options)
    : window_(window), ui_(ui), socket_(socket), options_(options), dark_(ui.view().dark) {}

bool FrameLoop::frame() {
    const double longest_s = rest_seconds();
    if (window_.wait(longest_s))
        frames_due_ = frames_after_event;
    else if (frames_due_ == 0 &&
             std::chrono::steady_clock::now() - drawn_at_ >= std::chrono::duration<double>(longest_s))
        frames_due_ = 1; // the text cursor blinks, something moves
    if (frames_due_ > 0) {
        draw();
        drawn_at_ = std::chrono::steady_clock::now();
        --frames_due_;
    }
    if (picture_due()) frames_due_ = std::max(frames_due_, 1);
    const bool goes_on = !glfwWindowShouldClose(window_.handle()) && !ui_.session.passing.quit && !picture_taken_;
    if (!goes_on) glfwHideWindow(window_.handle()); // what is left to take apart is nothing to look at
    return goes_on;
}

double FrameLoop::rest_seconds() const {
    if (frames_due_ > 0) return 0;
    if (ui_.moving) return frame_seconds;
    if (ui_.resting.waiting) return pause_seconds;
    return ImGui::GetIO().WantTextInput ? blink_seconds : idle_seconds;
}

bool FrameLoop::picture_due() const {
    return !options_.screenshot.empty();
}

void FrameLoop::draw() {
    follow_scale();
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    const auto begun = std::chrono::steady_clock::now();
    let_return_press();
    ImGui::NewFrame();
    draw_desk(ui_);
    ImGui::Render();
    own_work_ = std::chrono::steady_clock::now() - begun;
    int width = 0, height = 0;
    glfwGetFramebufferSize(window_.handle(), &width, &height);
    const ImVec4 ground = vec(ui_.colours().ground);
    gl::viewport(width, height);
    gl::clear(ground.x, ground.y, ground.z);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    // Frames after the last answer until all sizes stand still; a race is well on its way by then.
    constexpr int settled = 6;
    frames_drawn_ = ui_.session.working() ? 0 : frames_drawn_ + 1;
    if (picture_due() && frames_drawn_ >= settled && !race_begins()) {
        const auto problem = save_picture(options_.screenshot, width, height);
        if (problem) std::fprintf(stderr, "pourbook: %s\n", problem->text.c_str());
        picture_failed_ = problem.has_value();
        picture_taken_ = true;
    }
    glfwSwapBuffers(window_.handle());
    keep_state();
    answer_socket();
}

void FrameLoop::answer_socket() {
    const platform::TestSocket::Question asked = socket_.asked();
    if (asked == platform::TestSocket::Question::screen)
        socket_.answer(screen_as_json(ui_, window_.handle(), ImGui::GetFrameCount(), own_work_.count() * 1000));
    if (asked == platform::TestSocket::Question::frame) socket_.answer(std::to_string(ImGui::GetFrameCount()));
}

/// Its magnets have hardly left the hand.
bool FrameLoop::race_begins() const {
    constexpr double on_its_way_s = 1.2;
    for (const auto& [id, race] : ui_.races)
        if (race.running && race.time_s < on_its_way_s) return true;
    return false;
}

/// A new display scale or theme takes effect between frames.
void FrameLoop::follow_scale() {
    const float scale = static_cast<float>(std::clamp(
        (options_.scale > 0 ? options_.scale : platform::content_scale(window_.handle())) * ui_.view().letters, 0.75,
        4.0));
    const bool rescaled = std::abs(scale - ui_.scale) > 0.01F;
    if (!rescaled && dark_ == ui_.view().dark) return;
    if (rescaled) {
        ui_.scale = scale;
        if (const Result<Fonts> fonts = build_fonts(scale)) ui_.fonts = *fonts;
        ImGui_ImplOpenGL3_DestroyFontsTexture();
        ImGui_ImplOpenGL3_CreateFontsTexture();
    }
    dark_ = ui_.view().dark;
    apply_style(ui_.colours(), ui_.scale);
}

void FrameLoop::keep_state() {
    if (ImGui::GetIO().WantTextInput || !ui_.session.history.note(ui_.view())) return;
    frames_due_ = std::max(frames_due_, 2);
    if (options_.state_file.empty()) return;
    if (const auto problem = write_view(options_.state_file, ui_.view()))
        std::fprintf(stderr, "pourbook: %s\n", problem->text.c_str());
}

} // namespace pourbook

#include "gui/window.hpp"

#include "gui/shell/fonts.hpp"
#include "gui/shell/frame_loop.hpp"
#include "gui/shell/picture_clipboard.hpp"
#include "gui/state/view_file.hpp"

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>
#include <cstdio>

namespace pourbook {
namespace {

constexpr int refused = 5;

int fail(const std::string& text) {
    std::fprintf(stderr, "pourbook: %s\n", text.c_str());
    return refused;
}

/// ImGui with its two back ends, for as long as the window lives.
class Toolkit {
public:
    explicit Toolkit(GLFWwindow* window) {
        IMGUI_CHECKVERSION();
        ImGui::CreateContext();
        ImGui::GetIO().IniFilename = nullptr; // what comes back next time is in the state file
        ImGui_ImplGlfw_InitForOpenGL(window, true);
        ImGui_ImplOpenGL3_Init("#version 330 core");
    }
    ~Toolkit() {
        ImGui_ImplOpenGL3_Shutdown();
        ImGui_ImplGlfw_Shutdown();
        ImGui::DestroyContext();
    }
    Toolkit(const Toolkit&) = delete;
    Toolkit& operator=(const Toolkit&) = delete;
};

ViewState starting_view(const Catalogue& catalogue, const WindowOptions& options) {
    ViewState view = first_view(catalogue);
    if (!options.state_file.empty()) {
        const Result<ViewState> kept = read_view(options.state_file, view);
        if (kept)
            view = *kept;
        else
            std::fprintf(stderr, "pourbook: %s: starting afresh\n", kept.problem().text.c_str());
    }
    if (!options.view.empty()) view.view = options.view;
    if (!options.dark) view.dark = false;
    return fitted(view, catalogue);
}

} // namespace

bool display_available() {
    glfwSetErrorCallback(nullptr);
    const bool available = glfwInit();
    if (available) glfwTerminate();
    return available;
}

int run_window(const Catalogue& catalogue, const WindowOptions& options) {
    const Result<std::unique_ptr<GlfwWindow>> opened =
        GlfwWindow::open("Pourbook", {options.width, options.height, options.scale <= 0, options.screenshot.empty()});
    if (!opened) return fail(opened.problem().text);
    GlfwWindow& window = **opened;
    const Toolkit toolkit(window.handle());
    const double scale = options.scale > 0 ? options.scale : window.content_scale();
    Session session(
        catalogue, starting_view(catalogue, options), [&window] { window.wake(); }, options.workshop);
    session.read_mesh = options.read_mesh;
    Ui ui{session, {}, static_cast<float>(std::clamp(scale, 0.75, 4.0))};
    const Result<Fonts> fonts = build_fonts(ui.scale);
    if (!fonts) return fail(fonts.problem().text);
    ui.fonts = *fonts;
    ui.session.date = options.date;
    PictureClipboard clipboard;
    ui.offer_picture = [&clipboard](const std::string& png) { return clipboard.offer(png); };
    apply_style(ui.colours(), ui.scale);
    TestSocket socket(options.test_socket, [&window] { window.wake(); });
    if (socket.failed()) return fail("test socket '" + options.test_socket + "' can't be opened");
    ui.probe.on = !options.test_socket.empty();
    return FrameLoop(window, ui, socket, options).run();
}

} // namespace pourbook

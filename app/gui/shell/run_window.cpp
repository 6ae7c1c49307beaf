#include "gui/window.hpp"

#include "answers/picture/picture.hpp"
#include "answers/picture/pixels.hpp"
#include "charts/icon.hpp"
#include "gui/shell/fonts.hpp"
#include "gui/shell/frame_loop.hpp"
#include "gui/shell/gl.hpp"
#include "gui/shell/open_folder.hpp"
#include "gui/shell/picture_clipboard.hpp"
#include "gui/state/view_file.hpp"

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>
#include <chrono>
#include <cstdio>

namespace pourbook {
namespace {

constexpr int refused_code = 5;
constexpr std::chrono::seconds longest_wait{1}; // for work that does not hear, such as reading from a stalled disk

int fail(const std::string& text) {
    std::fprintf(stderr, "pourbook: %s\n", text.c_str());
    return refused_code;
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

void warn(const std::string& text) {
    std::fprintf(stderr, "pourbook: %s\n", text.c_str());
}

ViewState starting_view(const Catalogue& catalogue, const WindowOptions& options, const RunningMark& mark) {
    ViewState view = first_view(catalogue);
    if (!options.state_file.empty()) {
        const KeptView kept = read_view(options.state_file, view);
        if (!kept.remark.empty()) warn(kept.remark);
        view = mark.left_behind() ? without_files(kept.view) : kept.view;
    }
    if (mark.left_behind()) warn("the last window ended without closing: this one starts in Rank and reads no part");
    if (!options.part_file.empty()) {
        view.view = "pour";
        view.pour.set("part", "stl:" + options.part_file);
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
    constexpr int icon_side = 128, smallest_width = 1280, smallest_height = 720; // what every view is laid out for
    if (const auto pixels = pixels_of(icon(icon_side))) window.set_icon(*pixels, icon_side);
    window.set_smallest(smallest_width, smallest_height);
    const Toolkit toolkit(window.handle());
    const double scale = options.scale > 0 ? options.scale : window.content_scale();
    const RunningMark mark(options.state_file);
    Session session(
        catalogue, starting_view(catalogue, options, mark), [&window] { window.wake(); }, options.workshop);
    session.read_mesh = options.read_mesh;
    Ui ui{session, {}, static_cast<float>(std::clamp(scale, 0.75, 4.0))};
    const Result<Fonts> fonts = build_fonts(ui.scale);
    if (!fonts) return fail(fonts.problem().text);
    ui.fonts = *fonts;
    ui.session.date = options.date;
    PictureClipboard clipboard;
    ui.offer_picture = [&clipboard](const std::string& png) { return clipboard.offer(png); };
    unsigned preview = 0;
    ui.show_pixels = [&preview](const Pixels& p) {
        preview = gl::texture(preview, p.width, p.height, p.bytes.data());
        return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(preview));
    };
    ui.open_folder = open_in_file_manager;
    apply_style(ui.colours(), ui.scale);
    TestSocket socket(options.test_socket, [&window] { window.wake(); });
    if (socket.failed()) return fail("test socket '" + options.test_socket + "' can't be opened");
    ui.probe.on = !options.test_socket.empty();
    const int code = FrameLoop(window, ui, socket, options).run();
    if (!session.ended_in(longest_wait)) mark.leave_at_once(code);
    return code;
}

} // namespace pourbook

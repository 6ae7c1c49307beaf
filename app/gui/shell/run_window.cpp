#include "gui/window.hpp"

#include "answers/picture/picture.hpp"
#include "answers/picture/pixels.hpp"
#include "charts/icon.hpp"
#include "gui/shell/fonts.hpp"
#include "gui/shell/frame_loop.hpp"
#include "gui/shell/gl.hpp"
#include "gui/state/view_link.hpp"
#include "platform/exchange.hpp"
#include "platform/main_loop.hpp"
#include "platform/picture_clipboard.hpp"
#include "platform/running_mark.hpp"
#include "platform/window_system.hpp"

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <memory>
#include <optional>

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
        ImGui::GetIO().KeyRepeatDelay = 0.5F; // as desktops have it: a slow frame must not make two of one press
        ImGui::GetIO().IniFilename = nullptr; // what comes back next time is in the state file
        ImGui_ImplGlfw_InitForOpenGL(window, true);
        ImGui_ImplOpenGL3_Init(platform::shader_version());
        if (!platform::has_own_clipboard()) return;
        ImGui::GetIO().SetClipboardTextFn = [](void*, const char* text) { platform::copy_text(text); };
        ImGui::GetIO().GetClipboardTextFn = [](void*) { return platform::pasted_text(); };
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

ViewState starting_view(const Catalogue& catalogue, const WindowOptions& options, const platform::RunningMark& mark) {
    ViewState view = first_view(catalogue);
    if (!options.state_file.empty()) {
        const KeptView kept = read_view(options.state_file, view);
        if (!kept.remark.empty()) warn(kept.remark);
        view = mark.left_behind() ? without_files(kept.view) : kept.view;
    }
    if (mark.left_behind()) warn("the last window ended without closing: this one starts in Rank and reads no part");
    if (!options.link.empty()) view = read_link(options.link, first_view(catalogue)).view;
    if (!options.part_file.empty()) {
        view.view = "pour";
        view.pour.set("part", "stl:" + options.part_file);
    }
    if (!options.view.empty()) view.view = options.view;
    if (!options.dark) view.dark = false;
    return fitted(view, catalogue);
}

/// All that lives as long as the window, taken apart in the reverse order. On the heap: a page's frames come after the
/// function that opened it has returned.
struct OpenWindow {
    OpenWindow(const Catalogue& catalogue, const WindowOptions& window_options, std::unique_ptr<GlfwWindow> opened)
        : options(window_options), window(std::move(opened)), toolkit(window->handle()),
          scale(options.scale > 0 ? options.scale : platform::content_scale(window->handle())),
          mark(options.state_file),
          session(
              catalogue, starting_view(catalogue, options, mark), [this] { window->wake(); }, options.workshop),
          ui{session, {}, static_cast<float>(std::clamp(scale, 0.75, 4.0))},
          socket(options.test_socket, [this] { window->wake(); }), loop(*window, ui, socket, options) {}

    std::optional<Problem> begin() {
        constexpr int icon_side = 128, smallest_width = 360, smallest_height = 480; // a phone
        if (const auto pixels = pixels_of(icon(icon_side))) window->set_icon(*pixels, icon_side);
        platform::set_smallest(window->handle(), smallest_width, smallest_height);
        session.read_mesh = options.read_mesh;
        session.date = options.date;
        if (!options.link.empty()) session.passing.link_fault = read_link(options.link, session.view).remark;
        session.passing.sheet_open = !options.link.empty();
        const Result<Fonts> fonts = build_fonts(ui.scale);
        if (!fonts) return fonts.problem();
        ui.fonts = *fonts;
        ui.offer_picture = [this](const std::string& png) { return clipboard.offer(png); };
        ui.show_pixels = [this](const Pixels& p) {
            preview = gl::texture(preview, p.width, p.height, p.bytes.data());
            return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(preview));
        };
        ui.open_folder = platform::open_folder;
        ui.probe.on = !options.test_socket.empty();
        apply_style(ui.colours(), ui.scale);
        if (socket.failed()) return refused("test socket '" + options.test_socket + "' can't be opened");
        return std::nullopt;
    }

    int end() {
        const int code = loop.exit_code();
        if (!session.ended_in(longest_wait)) mark.leave_at_once(code);
        return code;
    }

    WindowOptions options;
    std::unique_ptr<GlfwWindow> window;
    Toolkit toolkit;
    double scale;
    platform::RunningMark mark;
    Session session;
    Ui ui;
    platform::PictureClipboard clipboard;
    platform::TestSocket socket;
    FrameLoop loop;
    unsigned preview = 0; // texture of the picture room
};

} // namespace

bool display_available() {
    glfwSetErrorCallback(nullptr);
    const bool available = glfwInit();
    if (available) glfwTerminate();
    return available;
}

int run_window(const Catalogue& catalogue, const WindowOptions& options) {
    auto opened =
        GlfwWindow::open("Pourbook", {options.width, options.height, options.scale <= 0, options.screenshot.empty()});
    if (!opened) return fail(opened.problem().text);
    auto window = std::make_shared<OpenWindow>(catalogue, options, std::move(*opened));
    if (const auto problem = window->begin()) return fail(problem->text);
    return platform::repeat([window] { return window->loop.frame(); }, [window] { return window->end(); });
}

} // namespace pourbook

// Wiring only: the store opens the reference, the command line answers, the window shows.
#include "cli/run.hpp"
#include "db/store/reference_file.hpp"
#include "gui/window.hpp"
#include "importers/mesh/read_stl.hpp"

#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

namespace {

std::string beside_the_program() {
    std::error_code error;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", error);
    return (error ? std::filesystem::path(".") : program.parent_path()) / "pourbook-reference.sqlite";
}

/// Where the window's state comes back from: the platform's folder for it (XDG base directories), made if it is
/// missing.
std::string usual_state_file() {
    const char* state = std::getenv("XDG_STATE_HOME");
    const char* home = std::getenv("HOME");
    if (!(state && *state) && !(home && *home)) return {};
    const std::filesystem::path folder =
        (state && *state ? std::filesystem::path(state) : std::filesystem::path(home) / ".local/state") / "pourbook";
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    return error ? std::string() : (folder / "window.json").string();
}

pourbook::Result<pourbook::casting::Mesh> read_mesh(const std::string& path) {
    return pourbook::read_stl_file(path);
}

int open_window(const pourbook::Catalogue& catalogue, const pourbook::WindowWords& words) {
    pourbook::WindowOptions options;
    options.width = words.width;
    options.height = words.height;
    options.scale = words.scale;
    options.dark = words.dark;
    options.view = words.view;
    options.read_mesh = read_mesh;
    const bool scripted = !words.test_socket.empty() || !words.screenshot.empty();
    options.state_file = words.state_file.empty() && !scripted ? usual_state_file() : words.state_file;
    options.test_socket = words.test_socket;
    options.screenshot = words.screenshot;
    return pourbook::run_window(catalogue, options);
}

std::string year_and_month() {
    const std::time_t now = std::time(nullptr);
    std::tm utc{};
    gmtime_r(&now, &utc);
    char text[8];
    return std::strftime(text, sizeof text, "%Y-%m", &utc) ? text : "";
}

} // namespace

int main(int argc, char** argv) {
    const pourbook::CommandLine setup{POURBOOK_VERSION,         year_and_month(), beside_the_program(),
                                      pourbook::read_reference, open_window,      read_mesh};
    return pourbook::run_command_line(setup, std::vector<std::string>(argv + 1, argv + argc), std::cout, std::cerr);
}

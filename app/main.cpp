// Wiring only: the store opens the reference, the command line answers, the window shows.
#include "cli/run.hpp"
#include "db/store/reference_file.hpp"
#include "db/store/workshop_file.hpp"
#include "gui/window.hpp"
#include "importers/mesh/read_stl.hpp"
#include "importers/shop/read_rows.hpp"

#include <csignal>
#include <unistd.h>

#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <memory>
#include <string>
#include <vector>

namespace {

std::string beside_the_program() {
    std::error_code error;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", error);
    return (error ? std::filesystem::path(".") : program.parent_path()) / "pourbook-reference.sqlite";
}

/// A folder of the platform (XDG base directories): what the variable says, else below the home folder; empty without
/// either.
std::filesystem::path user_folder(const char* variable, const char* below_home) {
    const char* folder = std::getenv(variable);
    const char* home = std::getenv("HOME");
    if (folder && *folder) return std::filesystem::path(folder) / "pourbook";
    return home && *home ? std::filesystem::path(home) / below_home / "pourbook" : std::filesystem::path();
}

/// Where the window's state comes back from; the folder is made if it is missing.
std::string usual_state_file() {
    const std::filesystem::path folder = user_folder("XDG_STATE_HOME", ".local/state");
    if (folder.empty()) return {};
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    return error ? std::string() : (folder / "window.json").string();
}

std::string usual_workshop_file() {
    return user_folder("XDG_DATA_HOME", ".local/share") / "workshop.sqlite";
}

pourbook::Result<std::unique_ptr<pourbook::Workshop>> open_workshop(const std::string& path) {
    return pourbook::open_workshop(path);
}

volatile std::sig_atomic_t stop_asked = 0;

/// Asked for by what can stop half way; from the first time on, Ctrl-C is heard instead of ending the program.
bool asked_to_stop() {
    static const auto before = std::signal(SIGINT, [](int) { stop_asked = 1; });
    return before != SIG_ERR && stop_asked != 0;
}

/// A person at a terminal sees how far it is.
pourbook::Result<pourbook::casting::Mesh> read_mesh(const std::string& path) {
    const bool watched = ::isatty(STDERR_FILENO);
    const auto mesh = pourbook::read_stl_file(path, [watched](double share) {
        if (watched) std::cerr << "\rreading the mesh: " << static_cast<int>(share * 100) << " % " << std::flush;
        return !asked_to_stop();
    });
    if (watched) std::cerr << "\r\x1b[K";
    return mesh;
}

/// "2026-11-25"; SOURCE_DATE_EPOCH stands for the clock, so that what is written can be written again byte for byte.
std::string today() {
    const char* set = std::getenv("SOURCE_DATE_EPOCH");
    const std::time_t now = set && *set ? static_cast<std::time_t>(std::strtoll(set, nullptr, 10)) : std::time(nullptr);
    std::tm utc{};
    gmtime_r(&now, &utc);
    char text[11];
    return std::strftime(text, sizeof text, "%Y-%m-%d", &utc) ? text : "";
}

int open_window(const pourbook::Catalogue& catalogue, const pourbook::WindowWords& words,
                pourbook::Workshop& workshop) {
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
    options.date = today();
    options.workshop = &workshop;
    return pourbook::run_window(catalogue, options);
}

} // namespace

int main(int argc, char** argv) {
    const pourbook::CommandLine setup{POURBOOK_VERSION,         today(),       beside_the_program(),
                                      pourbook::read_reference, open_window,   read_mesh,
                                      usual_workshop_file(),    open_workshop, pourbook::restore_workshop,
                                      pourbook::open_rows,      asked_to_stop};
    std::signal(SIGXFSZ, SIG_IGN); // a limit on file sizes is an error to report, not a death
    return pourbook::run_command_line(setup, std::vector<std::string>(argv + 1, argv + argc), std::cout, std::cerr);
}

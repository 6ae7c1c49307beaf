// Wiring only: the store opens the reference, the command line answers, the window shows.
#include "answers/parts/shipped_file.hpp"
#include "cli/run.hpp"
#include "db/store/reference_file.hpp"
#include "db/store/workshop_file.hpp"
#include "db/store/workshop_salvage.hpp"
#include "gui/window.hpp"
#include "importers/mesh/read_stl.hpp"
#include "importers/shop/read_rows.hpp"

#include <fcntl.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace {

std::string usual_reference() {
    const std::string name = "pourbook-reference.sqlite", shipped = pourbook::shipped_file(name);
    return shipped.empty() ? name : shipped;
}

/// A folder of the platform (XDG base directories, which want a relative one ignored): what the variable says, else
/// below the home folder; empty without either.
std::filesystem::path user_folder(const char* variable, const char* below_home) {
    const auto absolute = [](const char* name) {
        const char* folder = std::getenv(name);
        return std::filesystem::path(folder && *folder == '/' ? folder : "");
    };
    if (const auto folder = absolute(variable); !folder.empty()) return folder / "pourbook";
    const auto home = absolute("HOME");
    return home.empty() ? home : home / below_home / "pourbook";
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
    const std::filesystem::path folder = user_folder("XDG_DATA_HOME", ".local/share");
    return folder.empty() ? std::string() : (folder / "workshop.sqlite").string();
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
    constexpr std::uintmax_t most_bytes = std::uintmax_t{2} << 30; // about 40 million triangles
    std::error_code error;
    if (std::filesystem::exists(path, error) && !std::filesystem::is_regular_file(path, error))
        return pourbook::refused("'" + path + "' is no ordinary file: a part is read from a file on a disk");
    if (std::filesystem::file_size(path, error) > most_bytes && !error)
        return pourbook::refused("'" + path + "' is larger than 2 GB: export it with fewer triangles");
    const bool watched = ::isatty(STDERR_FILENO);
    const auto mesh = pourbook::read_stl_file(path, [watched](double share) {
        if (watched) std::cerr << "\rreading the mesh: " << static_cast<int>(share * 100) << " % " << std::flush;
        return !asked_to_stop();
    });
    if (watched) std::cerr << "\r\x1b[K";
    return mesh;
}

/// "2026-11-25"; SOURCE_DATE_EPOCH stands for the clock, so that what is written can be written again byte for byte.
/// Empty where it is no number of seconds.
std::string today() {
    std::time_t now = std::time(nullptr);
    if (const char* set = std::getenv("SOURCE_DATE_EPOCH"); set && *set) {
        const char* end = set + std::string_view(set).size();
        if (std::from_chars(set, end, now).ptr != end) return {};
    }
    std::tm utc{};
    char text[32];
    return gmtime_r(&now, &utc) && std::strftime(text, sizeof text, "%Y-%m-%d", &utc) ? text : "";
}

/// A stream that was closed when the program began stays unwritable: no file may take its number and get the answer.
void hold_standard_streams() {
    for (int stream = ::open("/dev/null", O_RDONLY); stream >= 0; stream = ::open("/dev/null", O_RDONLY))
        if (stream > STDERR_FILENO) {
            ::close(stream);
            return;
        }
}

/// A file alone, as a desktop hands it over, is a part to cast or a file of one's own to work with.
std::vector<std::string> words_of(int argc, char** argv) {
    std::vector<std::string> words(argv + std::min(argc, 1), argv + argc);
    std::error_code error;
    const bool file =
        words.size() == 1 && words[0].starts_with('/') && std::filesystem::is_regular_file(words[0], error);
    const auto ends_in = [&](const char* ending) { return words[0].ends_with(ending); };
    if (file) words.insert(words.begin(), ends_in(".stl") || ends_in(".STL") ? "--stl" : "--workshop");
    return words;
}

int open_window(const pourbook::Catalogue& catalogue, const pourbook::WindowWords& words,
                pourbook::Workshop& workshop) {
    pourbook::WindowOptions options;
    options.width = words.width;
    options.height = words.height;
    options.scale = words.scale;
    options.dark = words.dark;
    options.view = words.view;
    options.part_file = words.part_file;
    options.read_mesh = read_mesh;
    const bool scripted = !words.test_socket.empty() || !words.screenshot.empty();
    options.state_file = words.state_file.empty() && !scripted ? usual_state_file() : words.state_file;
    options.test_socket = words.test_socket;
    options.screenshot = words.screenshot;
    options.date = today();
    options.workshop = &workshop;
    return pourbook::run_window(catalogue, options);
}

/// The shell knows the width of its window but seldom hands it on.
void state_terminal_width() {
    winsize size{};
    if (::isatty(STDOUT_FILENO) == 1 && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
        ::setenv("COLUMNS", std::to_string(size.ws_col).c_str(), 0);
}

} // namespace

int main(int argc, char** argv) {
    hold_standard_streams();
    std::signal(SIGXFSZ, SIG_IGN); // a limit on file sizes is an error to report, not a death
    if (today().empty()) {
        std::cerr << "pourbook: SOURCE_DATE_EPOCH '" << std::getenv("SOURCE_DATE_EPOCH")
                  << "' is no number of seconds: set it right or unset it\n";
        return 2;
    }
    state_terminal_width();
    const pourbook::CommandLine setup{today(),
                                      usual_reference(),
                                      pourbook::read_reference,
                                      open_window,
                                      read_mesh,
                                      usual_workshop_file(),
                                      open_workshop,
                                      pourbook::restore_workshop,
                                      pourbook::salvage_workshop,
                                      pourbook::open_rows,
                                      asked_to_stop,
                                      ::isatty(STDOUT_FILENO) == 1};
    return pourbook::run_command_line(setup, words_of(argc, argv), std::cout, std::cerr);
}

// Wiring only: the store opens the reference, the command line answers, the window shows.
#include "cli/run.hpp"
#include "db/store/reference_file.hpp"
#include "db/store/workshop_file.hpp"
#include "db/store/workshop_salvage.hpp"
#include "gui/window.hpp"
#include "importers/mesh/read_stl.hpp"
#include "importers/shop/read_rows.hpp"
#include "platform/clock.hpp"
#include "platform/folders.hpp"
#include "platform/process.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <memory>
#include <string>
#include <vector>

namespace {

namespace platform = pourbook::platform;

std::string usual_reference() {
    const std::string name = "pourbook-reference.sqlite", shipped = platform::shipped_file(name);
    return shipped.empty() ? name : shipped;
}

/// Where the window's state comes back from; the folder is made if it is missing.
std::string usual_state_file() {
    const std::filesystem::path folder = platform::state_folder();
    if (folder.empty()) return {};
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    return error ? std::string() : (folder / "window.json").string();
}

std::string usual_workshop_file() {
    const std::filesystem::path folder = platform::data_folder();
    return folder.empty() ? std::string() : (folder / "workshop.sqlite").string();
}

pourbook::Result<std::unique_ptr<pourbook::Workshop>> open_workshop(const std::string& path) {
    return pourbook::open_workshop(path);
}

/// A person at a terminal sees how far it is.
pourbook::Result<pourbook::casting::Mesh> read_mesh(const std::string& path) {
    constexpr std::uintmax_t most_bytes = std::uintmax_t{2} << 30; // about 40 million triangles
    std::error_code error;
    if (std::filesystem::exists(path, error) && !std::filesystem::is_regular_file(path, error))
        return pourbook::refused("'" + path + "' is no ordinary file: a part is read from a file on a disk");
    if (std::filesystem::file_size(path, error) > most_bytes && !error)
        return pourbook::refused("'" + path + "' is larger than 2 GB: export it with fewer triangles");
    const bool watched = platform::messages_go_to_terminal();
    const auto mesh = pourbook::read_stl_file(path, [watched](double share) {
        if (watched) std::cerr << "\rreading the mesh: " << static_cast<int>(share * 100) << " % " << std::flush;
        return !platform::asked_to_stop();
    });
    if (watched) std::cerr << "\r\x1b[K";
    return mesh;
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
    options.link = words.link;
    options.part_file = words.part_file;
    options.read_mesh = read_mesh;
    const bool scripted = !words.test_socket.empty() || !words.screenshot.empty();
    options.state_file = words.state_file.empty() && !scripted ? usual_state_file() : words.state_file;
    options.test_socket = words.test_socket;
    options.screenshot = words.screenshot;
    options.date = platform::today();
    options.workshop = &workshop;
    return pourbook::run_window(catalogue, options);
}

} // namespace

int main(int argc, char** argv) {
    platform::prepare_process();
    if (platform::today().empty()) {
        std::cerr << "pourbook: SOURCE_DATE_EPOCH '" << std::getenv("SOURCE_DATE_EPOCH")
                  << "' is no number of seconds: set it right or unset it\n";
        return 2;
    }
    const pourbook::CommandLine setup{platform::today(),
                                      usual_reference(),
                                      pourbook::read_reference,
                                      open_window,
                                      read_mesh,
                                      usual_workshop_file(),
                                      open_workshop,
                                      pourbook::restore_workshop,
                                      pourbook::salvage_workshop,
                                      pourbook::open_rows,
                                      platform::asked_to_stop,
                                      platform::answer_goes_to_terminal()};
    return pourbook::run_command_line(setup, words_of(argc, argv), std::cout, std::cerr);
}

// The page in the browser: the same wiring as app/main.cpp, without a command line. Called by page.js when the person's
// own file has been brought from the browser's store into /own.
#include "db/store/reference_file.hpp"
#include "db/store/workshop_file.hpp"
#include "gui/window.hpp"
#include "importers/mesh/read_stl.hpp"
#include "platform/clock.hpp"
#include "platform/folders.hpp"
#include "platform/web/page_calls.hpp"

#include <cstdio>
#include <cstdlib>
#include <exception>
#include <memory>
#include <string>

namespace {

using namespace pourbook;

std::string own_file() {
    return (platform::data_folder() / "workshop.sqlite").string();
}

std::string of_page(const char* name) {
    return platform::taken(page_words(name));
}

/// What the frames need for as long as the page is open: main() returns before the first of them.
struct Page {
    Catalogue catalogue;
    std::unique_ptr<Workshop> workshop;
};

int open_page() {
    auto page = std::make_unique<Page>();
    page->catalogue = read_reference(platform::shipped_file("pourbook-reference.sqlite"));
    auto workshop = open_workshop(own_file());
    if (workshop)
        page->workshop = std::move(*workshop);
    else
        std::fprintf(stderr, "%s\n", workshop.problem().text.c_str());
    WindowOptions options;
    options.width = std::atoi(of_page("pourbookWidth").c_str());
    options.height = std::atoi(of_page("pourbookHeight").c_str());
    options.state_file = (platform::state_folder() / "window.json").string();
    options.link = of_page("pourbookLink");
    options.test_socket = of_page("pourbookTest");
    options.read_mesh = [](const std::string& path) { return read_stl_file(path); };
    options.date = platform::today();
    options.workshop = page->workshop.get();
    return run_window(page.release()->catalogue, options);
}

} // namespace

/// Puts the file at this path in the place of the person's own; what is said to the person.
extern "C" const char* pourbook_restore(const char* file) {
    static std::string said;
    const auto kept = restore_workshop(own_file(), file);
    said = kept ? "taken as your own file" : kept.problem().text;
    return said.c_str();
}

int main() {
    try {
        return open_page();
    } catch (const std::exception& e) {
        std::fprintf(stderr, "pourbook: %s\n", e.what());
        return 4;
    }
}

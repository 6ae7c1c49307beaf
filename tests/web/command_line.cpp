// The command line as app/main.cpp wires it, for WebAssembly under node; without the window.
#include "cli/run.hpp"
#include "db/store/reference_file.hpp"
#include "db/store/workshop_file.hpp"
#include "db/store/workshop_salvage.hpp"
#include "importers/mesh/read_stl.hpp"
#include "importers/shop/read_rows.hpp"
#include "platform/clock.hpp"
#include "platform/process.hpp"

#include <iostream>

int main(int argc, char** argv) {
    using namespace pourbook;
    const CommandLine setup{platform::today(),
                            "pourbook-reference.sqlite",
                            read_reference,
                            [](const Catalogue&, const WindowWords&, Workshop&) { return 5; },
                            [](const std::string& path) { return read_stl_file(path); },
                            "workshop.sqlite",
                            [](const std::string& path) { return open_workshop(path); },
                            restore_workshop,
                            salvage_workshop,
                            open_rows,
                            platform::asked_to_stop,
                            false};
    return run_command_line(setup, {argv + 1, argv + argc}, std::cout, std::cerr);
}

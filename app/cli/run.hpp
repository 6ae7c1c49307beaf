// The command line: words in, text or JSON out, exit codes of the contract.
//   0 answered   2 the words can't be read   3 unknown metal or property, no value, outside the cited range
//   4 a damaged or newer file, or one that can't be written (the answer itself among them)   5 refused with the reason
#pragma once

#include "core/casting/mesh.hpp"
#include "core/materials/catalogue.hpp"
#include "core/result.hpp"
#include "core/workshop/row_source.hpp"
#include "core/workshop/workshop.hpp"

#include <functional>
#include <iosfwd>
#include <string>
#include <vector>

namespace pourbook {

/// What the window is asked to do; filled from the words when no command is given.
struct WindowWords {
    int width = 1440;
    int height = 900;
    double scale = 0;
    bool dark = true;
    std::string view, link, part_file, state_file, test_socket, screenshot;
};

struct CommandLine {
    std::string today;                                 // "2026-11-25"
    std::string default_reference;                     // path of the reference database beside the program
    std::function<Catalogue(const std::string&)> open; // throws std::runtime_error with one plain line
    std::function<int(const Catalogue&, const WindowWords&, Workshop&)> window;
    std::function<Result<casting::Mesh>(const std::string&)> read_mesh;
    std::string default_workshop; // path of the workshop's own file; need not exist yet
    std::function<Result<std::unique_ptr<Workshop>>(const std::string&)> open_workshop;
    std::function<Result<std::string>(const std::string&, const std::string&)> restore_workshop; // file, backup
    std::function<Result<Salvage>(const std::string&, const std::string&)> salvage_workshop;     // file, where to
    std::function<Result<std::unique_ptr<RowSource>>(const std::string&, const Kind&, const ColumnWords&)> open_rows;
    std::function<bool()> cancelled; // the person has asked to stop
    bool terminal = false;           // the answer goes to a terminal
};

/// words without the program's name. Never throws.
int run_command_line(const CommandLine& setup, const std::vector<std::string>& words, std::ostream& out,
                     std::ostream& err);

} // namespace pourbook

// What to say of words that the command line has no use for: the likely word, and the right --help.
#pragma once

#include "cli/context.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// "pourbook chart rank": the command that the words name, as far as they were read.
std::string command_read(const CLI::App& root);

/// One line, without the program's name in front.
std::string misread(const CLI::App& root, const CLI::ParseError& error, const std::vector<std::string>& words);

/// All commands, in their order.
std::vector<std::string> command_names(const CLI::App& root);

/// Words that begin with no command are a metal's name or a question: `sheet` or `ask` is put in front of them. Without
/// any words and without a display, those of the ranking that the window opens with.
std::vector<std::string> with_command(const CLI::App& root, std::vector<std::string> words, bool display);

} // namespace pourbook

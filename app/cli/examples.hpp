// An example and a group for every command: in its --help, in the manual page, and run by a test.
#pragma once

#include <CLI/CLI.hpp>

namespace pourbook {

/// Call once, when every command is declared.
void with_examples(CLI::App& root);

} // namespace pourbook

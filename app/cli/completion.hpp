// The completions of three shells, made from the commands as they are declared.
#pragma once

#include <CLI/CLI.hpp>

#include <string>

namespace pourbook {

/// The words before the cursor lead to a place (a command, a command's command); there its commands and options are
/// offered, after an option its choices, and the metals where one is expected, as the installed reference names them.
/// shell: bash, zsh or fish; empty for another.
std::string completion(const CLI::App& root, const std::string& shell);

} // namespace pourbook

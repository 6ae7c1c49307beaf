// The manual page, made from the commands as they are declared.
#pragma once

#include <CLI/CLI.hpp>

#include <string>

namespace pourbook {

/// In the man macros: pourbook(1).
std::string manual_page(const CLI::App& root, const std::string& version, const std::string& date);

} // namespace pourbook

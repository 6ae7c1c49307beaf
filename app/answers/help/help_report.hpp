// A page of the help for a program.
#pragma once

#include <string>

namespace pourbook {

std::string json_of_help(const std::string& page, const std::string& text);

} // namespace pourbook

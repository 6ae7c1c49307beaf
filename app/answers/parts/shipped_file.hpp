// Files that come with the program, found by the usual places, so that it runs where it was built, where it was
// installed and from a folder that was carried somewhere.
#pragma once

#include <string>

namespace pourbook {

/// Beside the program, else in ../share/pourbook from there; empty where it is in neither.
std::string shipped_file(const std::string& name);

} // namespace pourbook

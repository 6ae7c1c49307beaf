// Under which name pictures and tables are offered to be saved.
#pragma once

#include <string>

namespace pourbook {

/// The folder with the name, or with "name-2", "name-3" ... where such a file is there already.
std::string fresh_name(const std::string& folder, const std::string& name, const std::string& ending);

} // namespace pourbook

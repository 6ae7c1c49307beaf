// A folder in the system's own file manager.
#pragma once

#include <string>

namespace pourbook {

/// By xdg-open of the desktop; nothing happens where there is none.
void open_in_file_manager(const std::string& folder);

} // namespace pourbook

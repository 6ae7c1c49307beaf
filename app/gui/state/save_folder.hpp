// Where pictures and tables are offered to be saved, by the platform's convention (XDG user directories).
#pragma once

#include <string>

namespace pourbook {

/// `kind` is PICTURES or DOCUMENTS: the folder of the environment, else of user-dirs.dirs, else the home folder, the
/// first of these that exists; "." without a home.
std::string save_folder(const std::string& kind);

/// The folder with the name, or with "name-2", "name-3" ... where such a file is there already.
std::string fresh_name(const std::string& folder, const std::string& name, const std::string& ending);

} // namespace pourbook

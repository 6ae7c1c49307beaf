// Where things lie on this system. A path that is empty: there is no such place.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace pourbook::platform {

/// The folder the running program lies in.
std::filesystem::path program_folder();

/// Of the person's own file.
std::filesystem::path data_folder();

/// Of what comes back with the window.
std::filesystem::path state_folder();

/// Where pictures and tables are offered to be saved. `kind` is PICTURES or DOCUMENTS. On Linux the folder
/// of the environment (XDG_PICTURES_DIR), else of user-dirs.dirs, else the home folder, the first of these that exists;
/// "." without a home.
std::string save_folder(const std::string& kind);

/// Where this system keeps the fonts that the program is drawn with, beside those that came with the program.
std::vector<std::string> font_folders();

/// A file that comes with the program: beside it, else in ../share/pourbook from there; empty where it is in neither.
std::string shipped_file(const std::string& name);

} // namespace pourbook::platform

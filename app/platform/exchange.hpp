// What a person takes out of the program.
#pragma once

#include "core/result.hpp"

#include <string>

namespace pourbook::platform {

/// Bytes under a name that the person chose. Returns what came of it, in words: "saved as rank.png in /home/..."; a
/// page hands them to the browser, which keeps downloads where the person has told it. Errors: file.
Result<std::string> deliver(const std::string& file, const std::string& bytes);

/// Whether what is written into a folder stays there for the person; a page has none to keep.
bool keeps_folders();

/// A folder in the system's own file manager; nothing happens where there is none.
void open_folder(const std::string& folder);

/// The address at which this program can be opened as a page, before the mark "#"; empty where none is known.
std::string page_address();

} // namespace pourbook::platform

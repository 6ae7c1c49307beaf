// The files of the letters that window and pictures share, and the Debian package each comes with.
#pragma once

#include "core/result.hpp"

#include <string>

namespace pourbook {

struct FontFile {
    const char* name;
    const char* package;
};

namespace font_files {
inline constexpr FontFile regular{"Inter-Regular.otf", "fonts-inter"};
inline constexpr FontFile italic{"Inter-Italic.otf", "fonts-inter"};
inline constexpr FontFile semi_bold{"Inter-SemiBold.otf", "fonts-inter"};
inline constexpr FontFile signs{"DejaVuSans.ttf", "fonts-dejavu-core"};
} // namespace font_files

/// Beside the program in fonts/, else in ../share/pourbook/fonts, else the system's. Errors: no_value, naming file and
/// package.
Result<std::string> path_of(const FontFile& font);

/// Size of the signs beside letters of size 1.
inline constexpr double sign_size = 0.92;

} // namespace pourbook

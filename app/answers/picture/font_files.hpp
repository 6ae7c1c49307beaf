// The files of the letters that window and pictures share, and the Debian package each comes with.
#pragma once

namespace pourbook {

struct FontFile {
    const char* path;
    const char* package;
};

namespace font_files {
inline constexpr FontFile regular{"/usr/share/fonts/opentype/inter/Inter-Regular.otf", "fonts-inter"};
inline constexpr FontFile italic{"/usr/share/fonts/opentype/inter/Inter-Italic.otf", "fonts-inter"};
inline constexpr FontFile semi_bold{"/usr/share/fonts/opentype/inter/Inter-SemiBold.otf", "fonts-inter"};
inline constexpr FontFile signs{"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf", "fonts-dejavu-core"};
} // namespace font_files

/// Size of the signs beside letters of size 1.
inline constexpr double sign_size = 0.92;

} // namespace pourbook

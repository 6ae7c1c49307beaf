// Pixels as a PNG file's bytes.
#pragma once

#include "core/result.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Red, green, blue and a fourth byte that is passed over; rows from the top.
struct Pixels {
    int width = 0, height = 0;
    std::vector<unsigned char> bytes;
};

/// Errors: refused (no pixels, or more than cairo draws).
Result<std::string> png_of(const Pixels& pixels);

} // namespace pourbook

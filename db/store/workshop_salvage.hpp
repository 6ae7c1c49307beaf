// What is sound in a damaged workshop file, gathered into a new one.
#pragma once

#include "core/result.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct Salvage {
    std::size_t kept = 0;          // entries with a fitting check sum, now in the new file
    std::vector<std::string> lost; // "pin 1: its check sum does not fit", "price: unreadable after number 37"
};

/// Reads every kind of entry forwards and, where that breaks off, backwards; the damaged file is not written. The
/// journal of changes is not taken over. Never overwrites. Errors: file.
Result<Salvage> salvage_workshop(const std::string& path, const std::string& target);

} // namespace pourbook

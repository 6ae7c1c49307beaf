// What is sound in a damaged workshop file, gathered into a new one.
#pragma once

#include "core/workshop/workshop.hpp"

#include <string>

namespace pourbook {

/// Reads every kind of entry forwards and, where that breaks off, backwards; the damaged file is not written. The
/// journal of changes is not taken over. Never overwrites. Errors: file.
Result<Salvage> salvage_workshop(const std::string& path, const std::string& target);

} // namespace pourbook

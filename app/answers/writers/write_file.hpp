// Bytes into a file, whole or not at all.
#pragma once

#include "core/result.hpp"

#include <optional>
#include <string>

namespace pourbook {

/// Writes a new file beside the old one and puts it in its place, so that a failure leaves the old one as it was.
/// Errors: file, with the system's reason.
std::optional<Problem> write_file(const std::string& path, const std::string& bytes);

} // namespace pourbook

// Bytes into a file, whole or not at all.
#pragma once

#include "platform/files.hpp"

namespace pourbook {

using platform::write_file;

} // namespace pourbook

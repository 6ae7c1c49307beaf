// One metal's file.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Faults of single records are added to `faults`; a fault of the head throws InputError.
Metal read_metal(const std::string& path, const Catalogue& dictionary, std::vector<std::string>& faults);

} // namespace pourbook

// Ids of records that were taken back: they are never given again, so that an old citation can't point to another
// value.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// A list of {"id", "why", "replaced_by" (optional)}. Adds a fault for an id still in use and for an unknown successor.
void check_withdrawn(const std::string& path, const Catalogue& catalogue, std::vector<std::string>& faults);

} // namespace pourbook

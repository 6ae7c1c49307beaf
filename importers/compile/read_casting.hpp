// Foundry practice: db/casting/*.json.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Adds to the catalogue what is sound and to the faults what is not. Metals and references must be read already.
void read_practices(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults);

} // namespace pourbook

// Figures of magnets and of superconducting elements: db/magnets.json.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Adds what is sound to the catalogue and notes each fault. References must be read already.
void read_magnets(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults);

} // namespace pourbook

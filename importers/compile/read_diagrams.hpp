// Data for estimates from composition: db/diagrams (binary diagrams), db/increments.json, db/atomic_masses.json.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Each adds to catalogue.alloys what is sound and to the faults what is not; a fault of the head throws InputError.
/// Atomic masses come first: elements are checked against them.
void read_atomic_masses(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults);
void read_increments(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults);
void read_diagram(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults);

} // namespace pourbook

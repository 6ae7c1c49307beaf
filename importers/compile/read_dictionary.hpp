// The dictionaries beside the metals: properties, references, cautions, price sets, goals.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

using Faults = std::vector<std::string>;

/// Each adds to the catalogue what is sound and to the faults what is not.
void read_properties(const std::string& path, Catalogue& catalogue, Faults& faults);
void read_references(const std::string& path, Catalogue& catalogue, Faults& faults);
void read_cautions(const std::string& path, Catalogue& catalogue, Faults& faults);
void read_price_set(const std::string& path, Catalogue& catalogue, Faults& faults); // metals must be read already
void read_price_forms(const std::string& path, Catalogue& catalogue, Faults& faults);
void read_known_names(const std::string& path, Catalogue& catalogue, Faults& faults); // metals must be read already
void read_goal(const std::string& path, Catalogue& catalogue, Faults& faults);

} // namespace pourbook

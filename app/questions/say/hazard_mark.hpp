// What a table's mark column says of a metal's hazards, whatever the question was.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// The elements that make the metal more dangerous than its base, or unfit for home casting, each once: "Pb", "Zn".
std::vector<std::string> hazard_elements(const Catalogue& catalogue, const Metal& metal);

/// "hazard: Pb, Zn"; empty where nothing marks it out. Each caution in full: `pourbook sheet METAL`.
std::string hazard_mark(const Catalogue& catalogue, const Metal& metal);

} // namespace pourbook

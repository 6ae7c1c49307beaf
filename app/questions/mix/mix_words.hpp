// Stocks and compositions as people write them.
//   stocks       "1.2kg sterling-silver + 300 g silver + 1ozt (Ag 80 Cu 20)": mass, then a metal (slug, name, alias or
//                chemical symbol) or a composition in brackets
//   composition  "Ag 92.5 Cu 7.5", "Ag92.5Cu7.5", "Cu 70, Zn balance": chemical symbols with per cent
#pragma once

#include "core/alloys/blend.hpp"
#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Errors: unreadable with the column, unknown metal or element, a sum that is not 100.
Result<Composition> composition_from(const Catalogue& catalogue, const std::string& words, bool atomic = false);

/// Errors: as above; a mass that is missing, negative or zero.
Result<std::vector<Stock>> stocks_from(const Catalogue& catalogue, const std::string& words);

/// One metal by slug, name, alias or chemical symbol, or a composition in brackets. Errors: unknown; a metal without a
/// composition.
Result<Composition> metal_composition(const Catalogue& catalogue, const std::string& word);

/// "P 0.02, Fe 0.01": elements and their per cent. Errors: unreadable, unknown, a figure outside 0 to 100.
Result<std::vector<Share>> shares_from(const Catalogue& catalogue, const std::string& words);

/// "Ag 95.8": one element and its per cent. Errors: unreadable, unknown.
Result<Share> share_from(const Catalogue& catalogue, const std::string& words);

} // namespace pourbook

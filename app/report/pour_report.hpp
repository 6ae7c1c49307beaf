// A casting plan as one page of text and as JSON.
#pragma once

#include "usecases/pour.hpp"
#include "usecases/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Cautions first, then pattern, charge, feeder, temperatures, cost, shop notes, checklist, blanks to fill in, sources.
std::string text_of(const PourResult& result, const Catalogue& catalogue, UnitSystem units);

std::string json_of(const PourResult& result, const Catalogue& catalogue);

/// Every source that entered the plan, each key once, in the order of the keys.
std::vector<std::string> source_keys(const PourResult& result);

} // namespace pourbook

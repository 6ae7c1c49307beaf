// A casting plan as a sheet for the wall (see page.hpp) and as JSON.
#pragma once

#include "answers/writers/page.hpp"
#include "questions/pour/pour.hpp"
#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Cautions first, then temperatures, charge, pattern, feeder, cost, checklist, blanks to fill in; shop notes on the
/// back; sources.
Page pour_page(const PourResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const PourResult& result, const Catalogue& catalogue, UnitSystem units);

std::string json_of(const PourResult& result, const Catalogue& catalogue);

/// Every source that entered the plan, each key once, in the order of the keys.
std::vector<std::string> source_keys(const PourResult& result);

} // namespace pourbook

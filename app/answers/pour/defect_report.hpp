// The defect key as text and as JSON; with a plan, what it has computed stands beside each entry.
#pragma once

#include "questions/pour/defects.hpp"
#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// plan: of the part that went wrong; nullptr without one.
std::string text_of(const std::vector<Defect>& defects, UnitSystem units, const PourResult* plan = nullptr);
std::string json_of(const std::vector<Defect>& defects, const PourResult* plan = nullptr);

} // namespace pourbook

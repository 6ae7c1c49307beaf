// What is asked for in Rank: a named goal, or a formula of the person's own.
#pragma once

#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

/// `chosen` becomes the id of a goal, or empty for the formula.
void draw_goals(Ui& ui, const std::string& id, std::string& chosen, float width);
/// The formula to the right edge, and whether the highest or the lowest is best; its fault below.
void draw_formula(Ui& ui, const std::string& id, const char* best_id, std::string& formula, bool& best_high);

} // namespace pourbook

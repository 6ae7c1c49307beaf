// A goal made ready: a named one or a formula of the user's own, what is held equal, and which metals it leaves out.
#pragma once

#include "questions/rank/goal_words.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct GoalPlan {
    std::string id, label, sentence;
    Merit merit;
    bool best_high = true;
    Holding holding = Holding::size;
    std::vector<Condition> where;
    bool only_home_casting = false, only_non_ferromagnetic = false, only_solid = false;

    bool worse(double a, double b) const { return best_high ? a < b : a > b; }
};

/// Errors: unreadable (unknown goal; formula or condition with its column; a holding that the goal holds already);
/// those of FallTime.
Result<GoalPlan> plan_goal(const Catalogue& catalogue, const GoalWords& words);

/// The goal that a question takes where none is named: the one the window opens with. nullptr without any goal.
const Goal* usual_goal(const Catalogue& catalogue);

/// The goal's formula names fall_time, so it needs a magnet and a tube.
bool needs_setup(const Catalogue& catalogue, const GoalWords& words);

/// Errors: unreadable, with the column.
Result<std::vector<Condition>> conditions_of(const Catalogue& catalogue, const std::vector<std::string>& where);

/// Why the goal leaves this metal out at this temperature, apart from its `where`; empty if it does not.
std::string barred(const Catalogue& catalogue, const Metal& metal, const GoalPlan& plan, double temperature_K);

} // namespace pourbook

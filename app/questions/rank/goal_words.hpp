// A goal as it is asked for, and the table of its fields: where a new input is declared, named, read and placed in the
// window. What it does is in goal_plan.cpp.
#pragma once

#include "questions/drop/setup_question.hpp"
#include "questions/rank/merit.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct GoalWords {
    std::string goal;    // id of a named goal, or empty
    std::string formula; // used when goal is empty
    bool best_high = true;
    Holding holding = Holding::size;
    std::vector<std::string> where;
    FallWords fall;               // where the formula names fall_time
    bool include_unusual = false; // drop the goal's own conditions and the bar on metals unfit for home casting
    bool operator==(const GoalWords&) const = default;
};

const char* name_of(Holding holding);

inline Fault read_best(bool& best_high, const std::string& text) {
    if (text != "high" && text != "low") return unreadable("high or low is expected");
    best_high = text == "high";
    return {};
}

inline Fault read_holding(GoalWords& goal, const std::string& text, const Catalogue&) {
    for (const Holding h : {Holding::size, Holding::mass, Holding::budget})
        if (text == name_of(h)) return goal.holding = h, Fault();
    return unreadable("size, mass or budget is expected");
}

inline const QuestionOf<GoalWords>& goal_question() {
    using namespace input;
    using G = GoalWords;
    static const QuestionOf<G> question = [] {
        QuestionOf<G> q("goal", "what a metal is wanted for");
        q.place("Goal");
        q.add(words("goal", "a named goal", "braking-per-cost"), &G::goal);
        q.add(words("formula", "or a formula over properties", "\"conductivity / density\""), &G::formula);
        q.last().excludes = "goal";
        q.add_read(choice("best", "which end is best, with a formula", {"high", "low"}),
                   [](G& g, const std::string& text, const Catalogue&) { return read_best(g.best_high, text); });
        q.add_read(choice("holding", "what is equal for all", {"size", "mass", "budget"}), read_holding);
        q.add(many(words("where", "a condition on the metals; may be repeated", "\"liquidus < 1100 degC\"")),
              &G::where);
        q.add(flag("include-unusual", "include what the goal leaves out as unfit for home casting", "unusual ones too"),
              &G::include_unusual);
        q.place("Fall");
        q.add(
            words("mass", "with --holding mass and a fall: the mass of the tube", "300g"),
            [](G & g) -> auto& { return g.fall.mass; });
        q.add(
            words("budget", "with --holding budget and a fall: what the tube's metal may cost", "20USD"),
            [](G & g) -> auto& { return g.fall.budget; });
        q.add_all(
            setup_question(), [](G & g) -> auto& { return g.fall.setup; });
        return q;
    }();
    return question;
}

} // namespace pourbook

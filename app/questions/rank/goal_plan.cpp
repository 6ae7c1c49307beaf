#include "questions/rank/goal_plan.hpp"

#include "core/nearest_words.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string held(const std::string& formula, Holding holding, bool best_high) {
    if (holding == Holding::size) return formula;
    const std::string amount = holding == Holding::mass ? "density" : "(density * price)";
    return "(" + formula + ")" + (best_high ? " / " : " * ") + amount;
}

/// A goal per mass or per cost holds its mass or budget by itself.
Result<bool> check_holding(const Formula& formula, Holding holding) {
    const auto uses = [&](const char* name) {
        const auto& names = formula.names();
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    if ((holding == Holding::budget && uses("price")) || (holding == Holding::mass && uses("density")))
        return unreadable(std::string("--holding ") + name_of(holding) + ": '" + formula.text() + "' holds it already");
    return true;
}

bool names_fall(const Formula& formula) {
    return std::find(formula.names().begin(), formula.names().end(), fall_time_name) != formula.names().end();
}

Result<Merit> merit_of(const Catalogue& catalogue, const Formula& bare, const GoalWords& words, bool best_high) {
    if (names_fall(bare)) {
        const auto fall = FallTime::from_words(catalogue, words.fall, words.holding);
        if (!fall) return fall.problem();
        return Merit(bare, *fall);
    }
    const FallWords& fall = words.fall;
    if (!fall.setup.magnet.empty() || !fall.setup.tube.empty() || !fall.mass.empty() || !fall.budget.empty())
        return unreadable("a magnet, a tube, a mass or a budget is for a goal with fall_time; '" + bare.text() +
                          "' has none");
    if (words.holding == Holding::size) return Merit(bare);
    return Merit(*Formula::parse(held(bare.text(), words.holding, best_high), catalogue));
}

Result<const Goal*> goal_named(const Catalogue& catalogue, const std::string& id) {
    if (const Goal* goal = catalogue.goal(id)) return goal;
    std::vector<std::string> ids;
    for (const Goal& g : catalogue.goals) ids.push_back(g.id);
    const std::string near = did_you_mean(id, ids);
    return unreadable("unknown goal '" + id + "'" + (near.empty() ? ": one of " + joined(ids, " ") : near));
}

} // namespace

const char* name_of(Holding holding) {
    return holding == Holding::size ? "size" : holding == Holding::mass ? "mass" : "budget";
}

const Goal* usual_goal(const Catalogue& catalogue) {
    if (const Goal* goal = catalogue.goal("braking-per-cost")) return goal;
    return catalogue.goals.empty() ? nullptr : &catalogue.goals.front();
}

bool needs_setup(const Catalogue& catalogue, const GoalWords& words) {
    const Goal* goal = catalogue.goal(words.goal);
    const Result<Formula> formula = Formula::parse(goal ? goal->formula : words.formula, catalogue);
    return formula && names_fall(*formula);
}

Result<std::vector<Condition>> conditions_of(const Catalogue& catalogue, const std::vector<std::string>& where) {
    std::vector<Condition> out;
    for (const std::string& text : where) {
        const Result<Condition> condition = Condition::parse(text, catalogue);
        if (!condition) return placed("condition", text, condition.problem());
        out.push_back(*condition);
    }
    return out;
}

Result<GoalPlan> plan_goal(const Catalogue& catalogue, const GoalWords& words) {
    GoalPlan plan;
    plan.best_high = words.best_high;
    plan.holding = words.holding;
    std::string formula_text = words.formula;
    std::vector<std::string> where = words.where;
    if (!words.goal.empty()) {
        const Result<const Goal*> found = goal_named(catalogue, words.goal);
        if (!found) return found.problem();
        const Goal& goal = **found;
        plan.id = goal.id;
        plan.label = goal.label;
        plan.sentence = goal.sentence;
        plan.best_high = goal.best_high;
        plan.only_solid = goal.only_solid;
        plan.only_non_ferromagnetic = goal.only_non_ferromagnetic;
        plan.only_home_casting = goal.only_home_casting && !words.include_unusual;
        formula_text = goal.formula;
        if (!words.include_unusual) where.insert(where.end(), goal.where.begin(), goal.where.end());
    }
    const Result<Formula> bare = Formula::parse(formula_text, catalogue);
    if (!bare) return placed("formula", formula_text, bare.problem());
    const Result<bool> holds = check_holding(*bare, words.holding);
    if (!holds) return holds.problem();
    if (words.goal.empty()) { // a formula of one's own leaves out what a named goal does
        plan.only_home_casting = !words.include_unusual;
        plan.only_non_ferromagnetic = names_fall(*bare);
    }
    const Result<Merit> merit = merit_of(catalogue, *bare, words, plan.best_high);
    if (!merit) return merit.problem();
    plan.merit = *merit;
    const Result<std::vector<Condition>> conditions = conditions_of(catalogue, where);
    if (!conditions) return conditions.problem();
    plan.where = *conditions;
    return plan;
}

std::string barred(const Catalogue& catalogue, const Metal& metal, const GoalPlan& plan, double temperature_K) {
    const auto at = [&] { return " at " + celsius_text(temperature_K); };
    if (plan.only_home_casting)
        for (const Caution* c : catalogue.cautions_for(metal))
            if (c->excludes_home_casting) return "not for home casting: " + c->reason;
    if (plan.only_non_ferromagnetic && ferromagnetic_at(catalogue, metal, temperature_K))
        return "ferromagnetic" + at() + ": it attracts the magnet";
    if (plan.merit.uses("conductivity") || plan.merit.uses("resistivity"))
        if (const std::string why = superconducting_at(catalogue, metal, temperature_K); !why.empty())
            return why + ": no resistance" + at();
    if (plan.only_solid && phase_at(catalogue, metal, temperature_K) != Phase::solid) return "not solid" + at();
    return {};
}

} // namespace pourbook

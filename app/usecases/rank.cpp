#include "usecases/rank.hpp"

#include "core/quantity/format.hpp"
#include "core/uncertainty/draws.hpp"
#include "usecases/find_metal.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace pourbook {
namespace {

using Kind = Problem::Kind;

struct Plan {
    RankResult result; // the head filled in
    Formula formula;
    std::vector<Condition> where;
    bool only_home_casting = false, only_non_ferromagnetic = false, only_solid = false;
};

Problem in(const std::string& what, const std::string& text, Problem p) {
    p.text = what + " '" + (text.size() > 80 ? text.substr(0, 77) + "..." : text) + "', column " +
             std::to_string(p.column) + ": " + p.text;
    return p;
}

void take_goal(Plan& plan, const Goal& goal, bool include_unusual) {
    plan.result.goal = goal.id;
    plan.result.label = goal.label;
    plan.result.sentence = goal.sentence;
    plan.result.formula = goal.formula;
    plan.result.best_high = goal.best_high;
    plan.only_solid = goal.only_solid;
    plan.only_non_ferromagnetic = goal.only_non_ferromagnetic;
    plan.only_home_casting = goal.only_home_casting && !include_unusual;
}

Result<std::vector<Condition>> conditions_of(const Catalogue& catalogue, const std::vector<std::string>& where) {
    std::vector<Condition> out;
    for (const std::string& text : where) {
        const Result<Condition> condition = Condition::parse(text, catalogue);
        if (!condition) return in("condition", text, condition.problem());
        out.push_back(*condition);
    }
    return out;
}

Result<Plan> planned(const Catalogue& catalogue, const RankRequest& request) {
    Plan plan;
    plan.result.formula = request.formula;
    plan.result.best_high = request.best_high;
    plan.result.conditions = request.conditions;
    std::vector<std::string> where = request.where;
    if (!request.goal.empty()) {
        const Goal* goal = catalogue.goal(request.goal);
        if (!goal) {
            std::string text = "unknown goal '" + request.goal + "': one of";
            for (const Goal& g : catalogue.goals) text += " " + g.id;
            return Problem{Kind::unreadable, text, 0};
        }
        take_goal(plan, *goal, request.include_unusual);
        if (!request.include_unusual) where.insert(where.end(), goal->where.begin(), goal->where.end());
    }
    const Result<Formula> formula = Formula::parse(plan.result.formula, catalogue);
    if (!formula) return in("formula", plan.result.formula, formula.problem());
    plan.formula = *formula;
    plan.result.unit = formula->dimension().text();
    const Result<std::vector<Condition>> conditions = conditions_of(catalogue, where);
    if (!conditions) return conditions.problem();
    plan.where = *conditions;
    return plan;
}

/// Values of the named properties, or what is missing.
struct Looked {
    std::vector<RankInput> inputs;
    std::vector<std::string> missing;
    std::string reason;
};

Looked look_up(const Catalogue& catalogue, const Metal& metal, const std::vector<std::string>& names,
               const Conditions& conditions) {
    Looked out;
    for (const std::string& name : names) {
        const Result<Evaluated> e = evaluate(catalogue, metal, name, conditions);
        if (e) {
            out.inputs.push_back({name, *e});
            continue;
        }
        out.missing.push_back(name);
        out.reason += (out.reason.empty() ? "" : "; ") + e.problem().text;
    }
    return out;
}

std::vector<double> nominal(const std::vector<RankInput>& inputs) {
    std::vector<double> values;
    for (const RankInput& i : inputs) values.push_back(i.value.value_si);
    return values;
}

/// Why the goal's own conditions leave this metal out; empty if they don't.
std::string barred(const Catalogue& catalogue, const Metal& metal, const Plan& plan) {
    const double t = plan.result.conditions.temperature_K;
    if (plan.only_home_casting)
        for (const Caution* c : catalogue.cautions_for(metal))
            if (c->excludes_home_casting) return "not for home casting: " + c->reason;
    if (plan.only_non_ferromagnetic && ferromagnetic_at(catalogue, metal, t))
        return "ferromagnetic at " + trimmed(t, 6) + " K: it attracts the magnet";
    if (plan.only_solid && phase_at(catalogue, metal, t) != Phase::solid) return "not solid at " + trimmed(t, 6) + " K";
    return {};
}

/// Value of the formula in each sample: every cause of uncertainty is drawn once and shared.
std::vector<double> sampled(const Formula& formula, const std::vector<RankInput>& inputs, Draws& draws) {
    std::vector<double> out(draws.samples());
    std::vector<std::vector<std::pair<const std::vector<double>*, double>>> causes(inputs.size());
    for (std::size_t i = 0; i < inputs.size(); ++i)
        for (const Cause& c : inputs[i].value.causes) causes[i].emplace_back(&draws.of(c.key), c.relative);
    std::vector<double> values(inputs.size());
    for (std::size_t s = 0; s < out.size(); ++s) {
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            double exponent = 0;
            for (const auto& [column, relative] : causes[i]) exponent += relative * (*column)[s];
            values[i] = inputs[i].value.value_si * std::exp(exponent);
        }
        out[s] = formula.value(values);
    }
    return out;
}

class Ranking {
public:
    Ranking(const Catalogue& catalogue, Plan plan, const RankRequest& request)
        : catalogue_(catalogue), plan_(std::move(plan)), request_(request), draws_(request.samples, request.seed) {}

    void consider(const Metal& metal) {
        if (const std::string bar = barred(catalogue_, metal, plan_); !bar.empty()) {
            plan_.result.excluded.push_back({&metal, bar, {}});
            return;
        }
        if (!meets_conditions(metal)) return;
        Looked looked = look_up(catalogue_, metal, plan_.formula.names(), request_.conditions);
        if (!looked.missing.empty()) {
            plan_.result.unrankable.push_back({&metal, looked.reason, looked.missing});
            return;
        }
        const double value = plan_.formula.value(nominal(looked.inputs));
        std::vector<double> samples = sampled(plan_.formula, looked.inputs, draws_);
        if (std::isnan(value) || std::any_of(samples.begin(), samples.end(), [](double x) { return std::isnan(x); })) {
            plan_.result.unrankable.push_back({&metal, "the formula has no finite value for it", {}});
            return;
        }
        contenders_.push_back({metal.slug, value, std::move(samples)});
        RankedMetal entry;
        entry.metal = &metal;
        entry.from_memory = std::any_of(looked.inputs.begin(), looked.inputs.end(),
                                        [](const RankInput& i) { return i.value.how_known == HowKnown::memory; });
        entry.inputs = std::move(looked.inputs);
        entries_.push_back(std::move(entry));
    }

    RankResult finish() {
        for (Place& place : put_in_order(contenders_, plan_.result.best_high)) {
            RankedMetal entry = entries_[place.contender];
            entry.place = std::move(place);
            plan_.result.ranked.push_back(std::move(entry));
        }
        plan_.result.ranked_in_all = plan_.result.ranked.size();
        if (request_.top && plan_.result.ranked.size() > request_.top) plan_.result.ranked.resize(request_.top);
        return std::move(plan_.result);
    }

private:
    bool meets_conditions(const Metal& metal) {
        for (const Condition& condition : plan_.where) {
            const Looked looked = look_up(catalogue_, metal, condition.names(), request_.conditions);
            if (!looked.missing.empty()) {
                plan_.result.unrankable.push_back(
                    {&metal, "condition '" + condition.text() + "': " + looked.reason, looked.missing});
                return false;
            }
            if (!condition.holds(nominal(looked.inputs), metal)) {
                plan_.result.excluded.push_back({&metal, "does not meet " + condition.text(), {}});
                return false;
            }
        }
        return true;
    }

    const Catalogue& catalogue_;
    Plan plan_;
    const RankRequest& request_;
    Draws draws_;
    std::vector<Contender> contenders_;
    std::vector<RankedMetal> entries_;
};

} // namespace

Result<std::vector<const Metal*>> list_metals(const Catalogue& catalogue, const std::string& find,
                                              const std::vector<std::string>& where, const Conditions& conditions) {
    const auto parsed = conditions_of(catalogue, where);
    if (!parsed) return parsed.problem();
    std::vector<const Metal*> out;
    for (const Metal* metal : search_metals(catalogue, find)) {
        const bool meets = std::all_of(parsed->begin(), parsed->end(), [&](const Condition& condition) {
            const Looked looked = look_up(catalogue, *metal, condition.names(), conditions);
            return looked.missing.empty() && condition.holds(nominal(looked.inputs), *metal);
        });
        if (meets) out.push_back(metal);
    }
    return out;
}

Result<RankResult> rank(const Catalogue& catalogue, const RankRequest& request) {
    Result<Plan> plan = planned(catalogue, request);
    if (!plan) return plan.problem();
    std::vector<const Metal*> field;
    for (const std::string& word : request.from) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        if (std::find(field.begin(), field.end(), *metal) == field.end()) field.push_back(*metal);
    }
    if (request.from.empty())
        for (const Metal& m : catalogue.metals) field.push_back(&m);
    Ranking ranking(catalogue, std::move(*plan), request);
    for (const Metal* metal : field) ranking.consider(*metal);
    return ranking.finish();
}

} // namespace pourbook

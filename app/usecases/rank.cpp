#include "usecases/rank.hpp"

#include "usecases/find_metal.hpp"
#include "usecases/settle.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

class Ranking {
public:
    Ranking(const Catalogue& catalogue, GoalPlan plan, const RankRequest& request)
        : catalogue_(catalogue), plan_(std::move(plan)), request_(request), draws_(request.samples, request.seed) {
        result_.goal = plan_.id;
        result_.label = plan_.label;
        result_.sentence = plan_.sentence;
        result_.formula = plan_.formula.text();
        result_.unit = plan_.formula.dimension().text();
        result_.best_high = plan_.best_high;
        result_.holding = plan_.holding;
        result_.conditions = request.conditions;
    }

    void consider(const Metal& metal) {
        if (const std::string bar = barred(catalogue_, metal, plan_, request_.conditions.temperature_K); !bar.empty()) {
            result_.excluded.push_back({&metal, bar, {}});
            return;
        }
        if (!meets_conditions(metal)) return;
        Inputs inputs = look_up(catalogue_, metal, plan_.formula.names(), request_.conditions);
        if (!inputs.missing.empty()) {
            result_.unrankable.push_back({&metal, inputs.reason, inputs.missing});
            return;
        }
        const double value = plan_.formula.value(inputs.nominal());
        std::vector<double> samples = sampled(plan_.formula, inputs.values, draws_);
        if (std::isnan(value) || std::any_of(samples.begin(), samples.end(), [](double x) { return std::isnan(x); })) {
            result_.unrankable.push_back({&metal, "the formula has no finite value for it", {}});
            return;
        }
        contenders_.push_back({metal.slug, value, std::move(samples)});
        const bool from_memory = inputs.from_memory();
        entries_.push_back({&metal, {}, std::move(inputs.values), from_memory});
    }

    RankResult finish() {
        for (Place& place : put_in_order(contenders_, plan_.best_high)) {
            RankedMetal entry = entries_[place.contender];
            entry.place = std::move(place);
            result_.ranked.push_back(std::move(entry));
        }
        settle();
        result_.ranked_in_all = result_.ranked.size();
        if (request_.top && result_.ranked.size() > request_.top) result_.ranked.resize(request_.top);
        return std::move(result_);
    }

private:
    bool meets_conditions(const Metal& metal) {
        for (const Condition& condition : plan_.where) {
            const Inputs inputs = look_up(catalogue_, metal, condition.names(), request_.conditions);
            if (!inputs.missing.empty()) {
                result_.unrankable.push_back(
                    {&metal, "condition '" + condition.text() + "': " + inputs.reason, inputs.missing});
                return false;
            }
            if (!condition.holds(inputs.nominal(), metal)) {
                result_.excluded.push_back({&metal, "does not meet " + condition.text(), {}});
                return false;
            }
        }
        return true;
    }

    void settle() {
        if (result_.ranked.size() < 2) return;
        const RankedMetal &first = result_.ranked[0], &second = result_.ranked[1];
        const auto& ties = first.place.tied_with;
        if (std::find(ties.begin(), ties.end(), second.metal->slug) == ties.end()) return;
        double sum = 0;
        for (const auto& [cause, variance] : ratio_variance(plan_.formula, first.inputs, second.inputs)) {
            sum += variance;
            if (variance > result_.settling.share) result_.settling = {cause, variance, {}};
        }
        if (sum <= 0) return;
        result_.settling.share /= sum;
        result_.settling.sentence = "The data can't tell " + first.metal->slug + " from " + second.metal->slug +
                                    "; a better figure for " + plain_cause(result_.settling.cause) +
                                    " would do most to settle it.";
    }

    const Catalogue& catalogue_;
    GoalPlan plan_;
    const RankRequest& request_;
    Draws draws_;
    std::vector<Contender> contenders_;
    std::vector<RankedMetal> entries_;
    RankResult result_;
};

/// Slugs of the first ten by nominal value at each price form; empty where the goal has no price.
std::vector<std::pair<std::string, std::vector<std::string>>>
orders_by_price_form(const Catalogue& catalogue, const GoalPlan& plan, const std::vector<const Metal*>& field,
                     const RankRequest& request) {
    constexpr std::size_t shown = 10;
    std::vector<std::pair<std::string, std::vector<std::string>>> out;
    const auto& names = plan.formula.names();
    if (std::find(names.begin(), names.end(), "price") == names.end()) return out;
    RankRequest bare = request;
    bare.samples = 0;
    bare.top = shown;
    for (const char* form : {"exchange", "retail", "scrap"}) {
        bare.conditions.price_form = form;
        Ranking ranking(catalogue, plan, bare);
        for (const Metal* metal : field) ranking.consider(*metal);
        out.emplace_back(form, std::vector<std::string>{});
        for (const RankedMetal& m : ranking.finish().ranked) out.back().second.push_back(m.metal->slug);
    }
    return out;
}

} // namespace

Result<std::vector<const Metal*>> list_metals(const Catalogue& catalogue, const std::string& find,
                                              const std::vector<std::string>& where, const Conditions& conditions) {
    const auto parsed = conditions_of(catalogue, where);
    if (!parsed) return parsed.problem();
    std::vector<const Metal*> out;
    for (const Metal* metal : search_metals(catalogue, find)) {
        const bool meets = std::all_of(parsed->begin(), parsed->end(), [&](const Condition& condition) {
            const Inputs inputs = look_up(catalogue, *metal, condition.names(), conditions);
            return inputs.missing.empty() && condition.holds(inputs.nominal(), *metal);
        });
        if (meets) out.push_back(metal);
    }
    return out;
}

Result<RankResult> rank(const Catalogue& catalogue, const RankRequest& request) {
    Result<GoalPlan> plan = plan_goal(catalogue, request.goal);
    if (!plan) return plan.problem();
    std::vector<const Metal*> field;
    for (const std::string& word : request.from) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        if (std::find(field.begin(), field.end(), *metal) == field.end()) field.push_back(*metal);
    }
    if (request.from.empty())
        for (const Metal& m : catalogue.metals) field.push_back(&m);
    Ranking ranking(catalogue, *plan, request);
    for (const Metal* metal : field) ranking.consider(*metal);
    RankResult result = ranking.finish();
    result.order_by_price_form = orders_by_price_form(catalogue, *plan, field, request);
    return result;
}

} // namespace pourbook

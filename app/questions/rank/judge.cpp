#include "questions/rank/judge.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::size_t columns_kept = 500; // what many metals share is drawn again now and then

} // namespace

std::vector<Conditions> over_range(Conditions from, double to_K) {
    std::vector<Conditions> out{from};
    if (std::isnan(to_K)) return out;
    for (int i = 1; i < range_steps; ++i) {
        Conditions& here = out.emplace_back(from);
        here.temperature_K += (to_K - from.temperature_K) * i / (range_steps - 1);
    }
    return out;
}

std::vector<double> samples_over(const Catalogue& catalogue, const GoalPlan& plan, const Metal& metal,
                                 const std::vector<RankInput>& inputs, const std::vector<Conditions>& range,
                                 Draws& draws) {
    if (range.size() == 1) return plan.merit.samples(inputs, draws);
    std::vector<double> worst;
    for (const Conditions& conditions : range) {
        const Inputs there = plan.merit.inputs(catalogue, metal, conditions);
        std::vector<double> here = plan.merit.samples(there.values, draws);
        if (worst.empty()) worst = here;
        for (std::size_t s = 0; s < here.size(); ++s)
            if (plan.worse(here[s], worst[s]) || std::isnan(here[s])) worst[s] = here[s];
    }
    return worst;
}

Judge::Judge(const Catalogue& catalogue, const GoalPlan& plan, const Conditions& conditions, double to_K,
             std::size_t samples, std::uint64_t seed, bool story)
    : catalogue_(catalogue), plan_(plan), range_(over_range(conditions, to_K)), draws_(samples, seed) {
    for (Conditions& c : range_) c.story = story;
    if (!story && range_.size() == 1 && !plan.merit.fall())
        plain_.emplace(catalogue, plan.merit.properties(), range_.front());
}

std::optional<Judged> Judge::judge(const Metal& metal) {
    std::optional<Judged> worst;
    for (const Conditions& conditions : range_) {
        std::optional<Judged> here = at(metal, conditions);
        if (!here) return std::nullopt;
        if (!worst || plan_.worse(here->merit, worst->merit)) worst = std::move(here);
    }
    return worst;
}

std::optional<Judged> Judge::at(const Metal& metal, const Conditions& conditions) {
    if (const std::string bar = barred(catalogue_, metal, plan_, conditions.temperature_K); !bar.empty()) {
        excluded.push_back({&metal, bar, {}});
        return std::nullopt;
    }
    if (!meets_conditions(metal, conditions)) return std::nullopt;
    if (plain_ && plain_->read(metal, figures_)) return plainly(metal);
    if (const std::string why = plan_.merit.refusal(catalogue_, metal, conditions); !why.empty()) {
        excluded.push_back({&metal, why, {}});
        return std::nullopt;
    }
    Inputs inputs = plan_.merit.inputs(catalogue_, metal, conditions);
    if (!inputs.missing.empty()) {
        unrankable.push_back({&metal, inputs.reason, inputs.missing});
        return std::nullopt;
    }
    return weighed({&metal, conditions.temperature_K, no_number, nominal(inputs.values), any_from_memory(inputs.values),
                    any_stale(inputs.values), std::move(inputs.values)});
}

std::optional<Judged> Judge::plainly(const Metal& metal) {
    Judged judged{&metal, range_.front().temperature_K};
    judged.values.reserve(figures_.size());
    for (const PlainFigure& f : figures_) {
        judged.values.push_back(f.value_si);
        judged.from_memory = judged.from_memory || f.how_known == HowKnown::memory;
        judged.stale_price = judged.stale_price || f.stale;
    }
    return weighed(std::move(judged));
}

/// With its merit; empty where there is none.
std::optional<Judged> Judge::weighed(Judged judged) {
    if (std::string why = plan_.merit.fault(judged.values); !why.empty()) {
        unrankable.push_back({judged.metal, std::move(why), {}});
        return std::nullopt;
    }
    judged.merit = plan_.merit.value(judged.values);
    if (!std::isnan(judged.merit)) return judged;
    unrankable.push_back({judged.metal, "the formula has no finite value for it", {}});
    return std::nullopt;
}

bool Judge::meets_conditions(const Metal& metal, const Conditions& conditions) {
    for (const Condition& condition : plan_.where) {
        const Inputs inputs = look_up(catalogue_, metal, condition.names(), conditions);
        if (!inputs.missing.empty()) {
            unrankable.push_back({&metal, "condition '" + condition.text() + "': " + inputs.reason, inputs.missing});
            return false;
        }
        if (!condition.holds(nominal(inputs.values), metal)) {
            excluded.push_back({&metal, "does not meet " + condition.text(), {}});
            return false;
        }
    }
    return true;
}

std::vector<RankInput> Judge::inputs_again(const Metal& metal) {
    if (!plain_ || !plain_->read(metal, figures_)) return plan_.merit.inputs(catalogue_, metal, range_.front()).values;
    std::vector<RankInput> out;
    for (std::size_t i = 0; i < figures_.size(); ++i)
        out.push_back({plan_.merit.properties()[i], plain_->with_cause(metal, i, figures_[i])});
    return out;
}

std::vector<double> Judge::samples(const Judged& judged) {
    if (draws_.samples() == 0) return {};
    draws_.forget_beyond(columns_kept);
    if (judged.inputs.empty())
        return samples_over(catalogue_, plan_, *judged.metal, inputs_again(*judged.metal), range_, draws_);
    return samples_over(catalogue_, plan_, *judged.metal, judged.inputs, range_, draws_);
}

} // namespace pourbook

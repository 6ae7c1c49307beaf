#include "cli/rank_words.hpp"

#include "cli/setup_words.hpp"

namespace pourbook {

std::optional<Problem> RankWords::read_range(std::string& at) {
    const Result<double> to_K = take_upper_end(at);
    if (!to_K) return to_K.problem();
    request.to_K = *to_K;
    return std::nullopt;
}

RankRequest RankWords::asked(const Conditions& conditions) const {
    RankRequest out = request;
    out.conditions = conditions;
    out.goal.best_high = best == "high";
    return out;
}

void with_rank_words(Context& context, CLI::App* c, RankWords& words) {
    RankRequest& request = words.request;
    auto* goal = c->add_option("--goal", request.goal.goal, "a named goal, such as braking-per-cost");
    auto* formula = c->add_option("--formula", request.goal.formula,
                                  "a formula over properties, such as \"conductivity / density\"");
    goal->excludes(formula);
    c->add_option("--best", words.best, "high (default) or low is best, with --formula")
        ->check(CLI::IsMember({"high", "low"}));
    with_holding(c, request.goal);
    c->add_option("--where", request.goal.where, "a condition; may be repeated");
    c->add_option("--from", request.from,
                  "only these metals, separated by commas; or stock: what is on your shelf, at the prices paid")
        ->delimiter(',');
    c->add_flag("--include-unusual", request.goal.include_unusual,
                "include what the goal leaves out as unfit for home casting");
    c->add_option("--top", request.top, "show only the first N");
    c->add_option("--samples", request.samples, "samples for the intervals (default 2000)")
        ->check(CLI::Range(10, 200000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    context.with_mixes_too(c);
    context.with_conditions(c);
    context.metal_lists.push_back(&request.from);
    c->get_option("--at")->description(
        "temperature: 77K, 20degC (default 293.15K), or a range 77K:300K over which the worst counts");
}

} // namespace pourbook

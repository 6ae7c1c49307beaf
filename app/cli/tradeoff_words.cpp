#include "cli/tradeoff_words.hpp"

#include "cli/rank_words.hpp"

namespace pourbook {

TradeoffRequest TradeoffWords::asked(const Conditions& conditions, double to_K) const {
    TradeoffRequest out = request;
    out.conditions = conditions;
    out.to_K = to_K;
    out.first.best_high = best == "high";
    out.second.best_high = and_best == "high";
    return out;
}

void with_tradeoff_words(Context& context, CLI::App* c, TradeoffWords& words) {
    with_goal(c, words.request.first, words.best);
    auto* goal = c->add_option("--and", words.request.second.goal, "the other goal, by name");
    c->add_option("--and-formula", words.request.second.formula, "or by its formula over properties")->excludes(goal);
    c->add_option("--and-best", words.and_best, "high (default) or low is best, with --and-formula")
        ->check(CLI::IsMember({"high", "low"}));
    c->add_option("--where", words.request.first.where, "a condition; may be repeated");
    c->add_option("--from", words.request.from, "only these metals, separated by commas")->delimiter(',');
    context.with_range(c);
    context.metal_lists.push_back(&words.request.from);
}

} // namespace pourbook

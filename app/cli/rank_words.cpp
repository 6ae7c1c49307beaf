#include "cli/rank_words.hpp"

#include "cli/setup_words.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {

RankRequest RankWords::asked(const Conditions& conditions, double to_K) const {
    RankRequest out = request;
    out.conditions = conditions;
    out.to_K = to_K;
    out.goal.best_high = best == "high";
    return out;
}

void with_goal(CLI::App* c, GoalWords& words, std::string& best) {
    auto* goal = c->add_option("--goal", words.goal, "a named goal, such as braking-per-cost");
    c->add_option("--formula", words.formula, "a formula over properties, such as \"conductivity / density\"")
        ->excludes(goal)
        ->check([](const std::string& text) {
            return text.find_first_not_of(' ') == std::string::npos ? "nothing to read: a formula is expected" : "";
        });
    c->add_option("--best", best, "high (default) or low is best, with --formula")
        ->check(CLI::IsMember({"high", "low"}));
}

void take_usual_goal(const Context& context, const Catalogue& catalogue, GoalWords& words) {
    const Goal* goal = usual_goal(catalogue);
    if (!goal || !words.goal.empty() || !words.formula.empty()) return;
    words.goal = goal->id;
    std::vector<std::string> others;
    for (const Goal& g : catalogue.goals)
        if (g.id != goal->id) others.push_back(g.id);
    if (!context.json)
        context.err << "pourbook: no goal was named, so " << goal->id << " (" << goal->label
                    << ") is taken; --goal NAME takes another: " << joined(others) << "\n";
}

Result<RankedFrom> ranked_from(const Context& context, const Catalogue& catalogue, RankRequest request) {
    take_usual_goal(context, catalogue, request.goal);
    if (request.from != std::vector<std::string>{"stock"}) return RankedFrom{std::move(request), std::nullopt};
    for (const StockLot& lot : context.own.stock)
        if (!catalogue.metal(lot.metal))
            return Problem{Problem::Kind::unknown,
                           "--from stock: lot '" + lot.lot + "' is of '" + lot.metal +
                               "', which is no metal of the reference or of your own: `pourbook stock edit " + lot.lot +
                               " --metal METAL`, or `pourbook own-metal add " + lot.metal + "`",
                           0};
    request.from = metals_on_the_shelf(context.own);
    if (request.from.empty())
        return Problem{Problem::Kind::no_value,
                       "--from stock: nothing is on the shelf yet: `pourbook stock add copper 2kg`", 0};
    return RankedFrom{std::move(request), with_lot_prices(catalogue, context.own)};
}

void with_rank_words(Context& context, CLI::App* c, RankWords& words) {
    RankRequest& request = words.request;
    with_goal(c, request.goal, words.best);
    with_holding(c, request.goal);
    c->add_option("--where", request.goal.where, "a condition; may be repeated");
    c->add_option("--from", request.from,
                  "only these metals, separated by commas; or stock: what is on your shelf, at the prices paid")
        ->delimiter(',');
    c->add_flag("--include-unusual", request.goal.include_unusual,
                "include what the goal leaves out as unfit for home casting");
    c->add_option("--top", request.top, "show only the first N");
    c->add_option("--samples", request.samples,
                  "samples for the intervals (default 2000); 0: the figures as cited, without intervals")
        ->check(CLI::IsMember({0}) | CLI::Range(10, 200000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    context.with_mixes_too(c);
    context.with_range(c);
    context.metal_lists.push_back(&request.from);
}

} // namespace pourbook

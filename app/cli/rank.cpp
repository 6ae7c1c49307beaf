#include "cli/context.hpp"

#include "cli/setup_words.hpp"
#include "report/json.hpp"
#include "report/text.hpp"

namespace pourbook {
namespace {

bool request_from_shelf(const std::vector<std::string>& from) {
    return from.size() == 1 && from.front() == "stock";
}

/// What is on the shelf, at the prices paid for it.
int rank_shelf(const Context& context, RankRequest request, const Catalogue& catalogue) {
    request.from = metals_on_the_shelf(context.own);
    if (request.from.empty())
        return context.failed(
            {Problem::Kind::no_value, "--from stock: nothing is on the shelf yet: `pourbook stock add copper 2kg`", 0});
    const Catalogue shelf = with_lot_prices(catalogue, context.own);
    return context.answered(
        rank(shelf, request), [&](const RankResult& r) { return json_of(r, shelf); },
        [&](const RankResult& r, UnitSystem u) { return text_of(r, shelf, u); });
}

} // namespace

void declare_rank(Context& context) {
    struct Words {
        RankRequest request;
        std::string best = "high";
    };
    auto words = std::make_shared<Words>();
    RankRequest& request = words->request;
    CLI::App* c = context.command("rank", "order the metals by a goal");
    auto* goal = c->add_option("--goal", request.goal.goal, "a named goal, such as braking-per-cost");
    auto* formula = c->add_option("--formula", request.goal.formula,
                                  "a formula over properties, such as \"conductivity / density\"");
    goal->excludes(formula);
    c->add_option("--best", words->best, "high (default) or low is best, with --formula")
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
    c->callback([&context, words] {
        const Result<double> to_K = take_upper_end(context.words.at);
        context.answer = [&context, to_K](const Catalogue&) { return context.failed(to_K.problem()); };
        if (!to_K) return;
        words->request.to_K = *to_K;
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                words->request.conditions = conditions;
                words->request.goal.best_high = words->best == "high";
                if (request_from_shelf(words->request.from)) return rank_shelf(context, words->request, catalogue);
                return context.answered(
                    rank(catalogue, words->request), [&](const RankResult& r) { return json_of(r, catalogue); },
                    [&](const RankResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook

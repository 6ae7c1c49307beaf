#include "cli/context.hpp"

#include "report/json.hpp"
#include "report/text.hpp"

namespace pourbook {

void declare_rank(Context& context) {
    struct Words {
        RankRequest request;
        std::string best = "high", holding = "size";
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
    c->add_option("--holding", words->holding, "what is equal for all: size (default), mass or budget")
        ->check(CLI::IsMember({"size", "mass", "budget"}));
    c->add_option("--where", request.goal.where, "a condition; may be repeated");
    c->add_option("--from", request.from, "only these metals, separated by commas")->delimiter(',');
    c->add_flag("--include-unusual", request.goal.include_unusual,
                "include what the goal leaves out as unfit for home casting");
    c->add_option("--top", request.top, "show only the first N");
    c->add_option("--samples", request.samples, "samples for the intervals (default 2000)")
        ->check(CLI::Range(10, 200000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    context.with_mixes_too(c);
    context.with_conditions(c);
    context.metal_lists.push_back(&request.from);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                words->request.conditions = conditions;
                words->request.goal.best_high = words->best == "high";
                words->request.goal.holding = words->holding == "mass"     ? Holding::mass
                                              : words->holding == "budget" ? Holding::budget
                                                                           : Holding::size;
                return context.answered(
                    rank(catalogue, words->request), [&](const RankResult& r) { return json_of(r, catalogue); },
                    [&](const RankResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook

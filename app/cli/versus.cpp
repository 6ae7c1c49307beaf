#include "cli/context.hpp"

#include "cli/rank_words.hpp"
#include "cli/setup_words.hpp"
#include "cli/short_words.hpp"
#include "cli/table_words.hpp"

namespace pourbook {

void declare_versus(Context& context) {
    struct Words {
        VersusRequest request;
        std::string best = "high";
        TableWords table;
        ShortWords brief;
    };
    auto words = std::make_shared<Words>();
    VersusRequest& request = words->request;
    CLI::App* c =
        context.command("versus", "two metals and a goal: one sentence with the ratio, the interval, the reason");
    c->add_option("METAL", request.a, "the one")->required();
    c->add_option("OTHER", request.b, "the other")->required();
    with_goal(c, request.goal, words->best);
    with_holding(c, request.goal);
    c->add_option("--samples", request.samples, "samples for the interval (default 4000)")
        ->check(CLI::Range(10, 200000));
    c->add_option("--seed", request.seed, "seed of the samples (default 1)");
    with_table_words(c, words->table);
    with_short_words(c, words->brief);
    context.with_range(c);
    context.metal_words.insert(context.metal_words.end(), {&request.a, &request.b});
    c->callback([&context, words] {
        context.answer = context.under_range(
            [&context, words](const Catalogue& catalogue, const Conditions& conditions, double to_K) {
                words->request.conditions = conditions;
                words->request.to_K = to_K;
                words->request.goal.best_high = words->best == "high";
                take_usual_goal(context, catalogue, words->request.goal);
                if (words->brief.asked())
                    return answered_shortly(context, catalogue, words->brief, versus(catalogue, words->request));
                return answered(context, catalogue, words->table, versus(catalogue, words->request));
            });
    });
}

} // namespace pourbook

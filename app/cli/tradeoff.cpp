#include "cli/context.hpp"

#include "cli/table_words.hpp"
#include "cli/tradeoff_words.hpp"
#include "report/tradeoff_report.hpp"

namespace pourbook {

void declare_tradeoff(Context& context) {
    struct Words {
        TradeoffRequest request;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("tradeoff", "two goals at once: which metals no other beats in both");
    with_tradeoff_words(c, words->request);
    with_table_words(c, words->table);
    context.with_conditions(c);
    context.metal_lists.push_back(&words->request.from);
    c->callback([&context, words] {
        context.answer =
            context.under_conditions([&context, words](const Catalogue& catalogue, const Conditions& conditions) {
                words->request.conditions = conditions;
                return answered(
                    context, catalogue, words->table, tradeoff(catalogue, words->request),
                    [&](const TradeoffResult& r) { return json_of(r, catalogue); },
                    [&](const TradeoffResult& r, UnitSystem) { return text_of(r, catalogue); });
            });
    });
}

} // namespace pourbook

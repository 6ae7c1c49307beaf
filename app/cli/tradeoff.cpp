#include "cli/context.hpp"

#include "cli/tradeoff_words.hpp"
#include "report/tradeoff_report.hpp"

namespace pourbook {

void declare_tradeoff(Context& context) {
    auto request = std::make_shared<TradeoffRequest>();
    CLI::App* c = context.command("tradeoff", "two goals at once: which metals no other beats in both");
    with_tradeoff_words(c, *request);
    context.with_conditions(c);
    context.metal_lists.push_back(&request->from);
    c->callback([&context, request] {
        context.answer =
            context.under_conditions([&context, request](const Catalogue& catalogue, const Conditions& conditions) {
                request->conditions = conditions;
                return context.answered(
                    tradeoff(catalogue, *request), [&](const TradeoffResult& r) { return json_of(r, catalogue); },
                    [&](const TradeoffResult& r, UnitSystem) { return text_of(r, catalogue); });
            });
    });
}

} // namespace pourbook

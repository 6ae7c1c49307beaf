#include "cli/context.hpp"

#include "cli/table_words.hpp"
#include "cli/tradeoff_words.hpp"

namespace pourbook {

void declare_tradeoff(Context& context) {
    struct Words {
        TradeoffWords goals;
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("tradeoff", "two goals at once: which metals no other beats in both");
    with_tradeoff_words(context, c, words->goals);
    with_table_words(c, words->table);
    c->callback([&context, words] {
        context.answer = context.under_range(
            [&context, words](const Catalogue& catalogue, const Conditions& conditions, double to_K) {
                return answered(context, catalogue, words->table,
                                tradeoff(catalogue, words->goals.asked(conditions, to_K)));
            });
    });
}

} // namespace pourbook

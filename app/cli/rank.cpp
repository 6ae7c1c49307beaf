#include "cli/context.hpp"

#include "cli/rank_words.hpp"
#include "cli/short_words.hpp"
#include "cli/table_words.hpp"

namespace pourbook {

void declare_rank(Context& context) {
    struct Words : RankWords {
        TableWords table;
        ShortWords brief;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("rank", "order the metals by a goal");
    with_rank_words(context, c, *words);
    with_table_words(c, words->table);
    with_short_words(c, words->brief);
    c->callback([&context, words] {
        context.answer = context.under_range(
            [&context, words](const Catalogue& catalogue, const Conditions& conditions, double to_K) {
                const Result<RankedFrom> from = ranked_from(context, catalogue, words->asked(conditions, to_K));
                if (!from) return context.failed(from.problem());
                const Catalogue& in = from->in(catalogue);
                if (words->brief.asked()) return answered_shortly(context, in, words->brief, rank(in, from->request));
                return answered(context, in, words->table, rank(in, from->request));
            });
    });
}

} // namespace pourbook

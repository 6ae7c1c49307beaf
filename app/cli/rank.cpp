#include "cli/context.hpp"

#include "cli/rank_words.hpp"
#include "cli/table_words.hpp"
#include "report/json.hpp"
#include "report/text.hpp"

namespace pourbook {
namespace {

bool request_from_shelf(const std::vector<std::string>& from) {
    return from.size() == 1 && from.front() == "stock";
}

/// What is on the shelf, at the prices paid for it.
int rank_shelf(const Context& context, RankRequest request, const TableWords& table, const Catalogue& catalogue) {
    request.from = metals_on_the_shelf(context.own);
    if (request.from.empty())
        return context.failed(
            {Problem::Kind::no_value, "--from stock: nothing is on the shelf yet: `pourbook stock add copper 2kg`", 0});
    const Catalogue shelf = with_lot_prices(catalogue, context.own);
    return answered(
        context, shelf, table, rank(shelf, request), [&](const RankResult& r) { return json_of(r, shelf); },
        [&](const RankResult& r, UnitSystem u) { return text_of(r, shelf, u); });
}

} // namespace

void declare_rank(Context& context) {
    struct Words : RankWords {
        TableWords table;
    };
    auto words = std::make_shared<Words>();
    CLI::App* c = context.command("rank", "order the metals by a goal");
    with_rank_words(context, c, *words);
    with_table_words(c, words->table);
    c->callback([&context, words] {
        context.answer = context.under_range(
            [&context, words](const Catalogue& catalogue, const Conditions& conditions, double to_K) {
                const RankRequest request = words->asked(conditions, to_K);
                if (request_from_shelf(request.from)) return rank_shelf(context, request, words->table, catalogue);
                return answered(
                    context, catalogue, words->table, rank(catalogue, request),
                    [&](const RankResult& r) { return json_of(r, catalogue); },
                    [&](const RankResult& r, UnitSystem u) { return text_of(r, catalogue, u); });
            });
    });
}

} // namespace pourbook

#include "questions/workshop/rank_in_workshop.hpp"

namespace pourbook {

Result<RankedFrom> ranked_from(const WorkshopData& own, const Catalogue& catalogue, RankRequest request) {
    if (request.from != std::vector<std::string>{"stock"}) return RankedFrom{std::move(request), std::nullopt};
    for (const StockLot& lot : own.stock)
        if (!catalogue.metal(lot.metal))
            return Problem{Problem::Kind::unknown,
                           "--from stock: lot '" + lot.lot + "' is of '" + lot.metal +
                               "', which is no metal of the reference or of your own: `pourbook stock edit " + lot.lot +
                               " --metal METAL`, or `pourbook own-metal add " + lot.metal + "`",
                           0};
    request.from = metals_on_the_shelf(own);
    if (request.from.empty())
        return Problem{Problem::Kind::no_value,
                       "--from stock: nothing is on the shelf yet: `pourbook stock add copper 2kg`", 0};
    return RankedFrom{std::move(request), with_lot_prices(catalogue, own)};
}

} // namespace pourbook

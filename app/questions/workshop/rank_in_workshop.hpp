// A ranking with what lies on the workshop's shelf: "stock" among the metals is what there is, at the prices paid.
#pragma once

#include "questions/rank/rank.hpp"
#include "questions/workshop/with_workshop.hpp"

namespace pourbook {

/// What is ranked, and by which catalogue.
struct RankedFrom {
    RankRequest request;
    std::optional<Catalogue> shelf; // with the prices paid

    const Catalogue& in(const Catalogue& all) const { return shelf ? *shelf : all; }
};

/// Errors: no_value (nothing on the shelf), unknown (a lot of a metal that is not known here).
Result<RankedFrom> ranked_from(const WorkshopData& own, const Catalogue& catalogue, RankRequest request);

} // namespace pourbook

// Scrap of a kind ("2kg scrap:brass", "2kg brass scrap") as a distribution: each element between its usual bounds
// (db/casting/scrap.json), the base takes the rest. A mix of it is reckoned for its middle, and for draws spread evenly
// over the bounds (Halton's sequence), whose 5th and 95th percentiles widen what is estimated.
#pragma once

#include "questions/mix/mix.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct ScrapPart {
    std::string element;
    double low_wt = 0, high_wt = 0;
};

struct Scrap {
    std::string base; // element that takes the rest
    std::vector<ScrapPart> parts;
    std::string source;
};

/// None where the words name no scrap. Errors: unknown kind, with the kinds there are.
std::optional<Result<Scrap>> scrap_named(const Catalogue& catalogue, const std::string& words);

/// Where each part lies between its bounds, 0 to 1; missing ones lie in the middle.
Result<Composition> scrap_composition(const AlloyData& data, const Scrap& scrap,
                                      const std::vector<double>& places = {});

/// Widens the estimates of a mix that holds scrap and notes what nine in ten melts hold. Without scrap: nothing.
void widen_by_scrap(const Catalogue& catalogue, MixResult& result);

} // namespace pourbook

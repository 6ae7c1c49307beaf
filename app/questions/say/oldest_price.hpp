// The month of the oldest price that entered a figure: what an amount of money is said to be of.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>

namespace pourbook {

/// As kept, such as "2025"; empty where no price of the reference entered.
inline std::string oldest_price(const Evaluated& e, const Catalogue& catalogue) {
    std::string as_of;
    for (const PriceSet& set : catalogue.price_sets)
        for (const Price& price : set.prices)
            for (const SourceValue& s : e.sources)
                if (s.record_id == "price." + price.metal && catalogue.price(price.metal) == &price &&
                    (as_of.empty() || price.as_of < as_of))
                    as_of = price.as_of;
    return as_of;
}

} // namespace pourbook

// The prices that entered a figure, and the month of the oldest: what an amount of money is said to be of.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Those of the reference.
inline std::vector<const Price*> prices_in(const Evaluated& e, const Catalogue& catalogue) {
    std::vector<const Price*> out;
    const std::string head = "price.";
    for (const SourceValue& s : e.sources)
        if (s.record_id.starts_with(head))
            if (const Price* price = catalogue.price(s.record_id.substr(head.size()))) out.push_back(price);
    return out;
}

/// As kept, such as "2025"; empty where no price of the reference entered.
inline std::string oldest_price(const Evaluated& e, const Catalogue& catalogue) {
    std::string as_of;
    for (const Price* price : prices_in(e, catalogue))
        if (as_of.empty() || price->as_of < as_of) as_of = price->as_of;
    return as_of;
}

} // namespace pourbook

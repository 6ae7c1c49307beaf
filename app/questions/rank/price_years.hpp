// Prices of several years in one ranking are said, so that nobody takes them for those of one day and one market.
#pragma once

#include "questions/rank/rank.hpp"
#include "questions/say/oldest_price.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace pourbook {

/// Each year with the metals whose price it is, and "the others" for the year that most are of. Empty: all are of one.
inline std::string price_years(const std::vector<RankedMetal>& ranked, const Catalogue& catalogue) {
    constexpr std::size_t digits = 4;
    std::map<std::string, std::set<std::string>> metals_of;
    for (const RankedMetal& m : ranked)
        for (const RankInput& input : m.inputs)
            for (const Price* price : prices_in(input.value, catalogue))
                metals_of[price->as_of.substr(0, digits)].insert(price->metal);
    if (metals_of.size() < 2) return {};
    const auto most = std::max_element(metals_of.begin(), metals_of.end(),
                                       [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
    std::string out;
    for (const auto& [year, metals] : metals_of) {
        std::string named;
        for (const std::string& slug : metals) named += (named.empty() ? "" : ", ") + slug;
        out += (out.empty() ? "Prices of several years enter: " : "; ") + year + " of " +
               (year == most->first ? "the others" : named);
    }
    return out + ".";
}

} // namespace pourbook

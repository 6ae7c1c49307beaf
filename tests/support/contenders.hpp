// Contenders with their samples at hand, for tests of the order.
#pragma once

#include "core/ranking/order.hpp"

#include <string>
#include <vector>

namespace pourbook::testing {

struct Contender {
    std::string name;
    double nominal = 0;
    std::vector<double> samples; // of equal length for all
};

inline std::vector<Place> in_order(const std::vector<Contender>& contenders, bool best_high) {
    std::vector<Standing> standings;
    for (const Contender& c : contenders) standings.push_back(sum_up(c.name, c.nominal, c.samples));
    const std::size_t samples = contenders.empty() ? 0 : contenders.front().samples.size();
    return put_in_order(
        standings, [&](std::size_t i) { return contenders[i].samples; }, samples, best_high);
}

} // namespace pourbook::testing

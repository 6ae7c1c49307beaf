// Order of contenders from samples of their merit: medians, 90 % intervals, chance of being first, interval of rank,
// and which the data can't tell apart (better in fewer than 95 % of the samples).
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace pourbook {

struct Contender {
    std::string name;
    double nominal = 0;
    std::vector<double> samples; // of equal length for all, sample i of all drawn together; may be empty for all
};

struct Place {
    std::size_t contender = 0; // index into the contenders
    std::size_t rank = 0;      // 1 is best
    double median = 0;
    double low90 = 0;
    double high90 = 0;
    double p_first = 0;
    std::size_t rank_low = 0; // 5 % and 95 % of the rank among the samples
    std::size_t rank_high = 0;
    std::vector<std::string> tied_with;
};

constexpr double told_apart = 0.95;

/// Best first. Without samples the interval equals the nominal value and chances are 0.
std::vector<Place> put_in_order(const std::vector<Contender>& contenders, bool best_high);

} // namespace pourbook

// How far samples spread: their ends, median and 90 % interval, without putting them all in order.
// The same numbers as quantile() gives (linear between neighbours), in time that grows as the number of samples.
#pragma once

#include <vector>

namespace pourbook {

struct Spread {
    double lowest = 0, low90 = 0, median = 0, high90 = 0, highest = 0;
};

/// At least one sample; none is NaN.
Spread spread_of(const std::vector<double>& samples);

} // namespace pourbook

// A temperature as a person writes it, or a range of them over which the worst counts (judge.hpp).
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>

namespace pourbook {

struct TemperatureRange {
    double from_K = room_temperature_K;
    std::optional<double> to_K = {}; // empty: a single temperature
};

/// "77K", "20degC". Errors: unreadable, with the column; outside 0 K to 100000 K.
Result<double> temperature_from(const std::string& text);

/// "77K", or "77K:300K". Errors: the same, also where the range doesn't rise.
Result<TemperatureRange> temperature_range(const std::string& text);

} // namespace pourbook

// A price of the user's own in US dollars, by the rate of exchange nearest in time.
#pragma once

#include "core/result.hpp"
#include "core/workshop/data.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// A price in US dollars with what its conversion rests on.
struct Converted {
    double usd_per_kg = no_number;
    std::string how; // "1.08 USD/EUR, central bank, 2026-11-01"; empty for dollars
};

/// Errors: no_value (no rate of exchange, with how to enter one).
Result<Converted> in_dollars(const OwnPrice& price, const std::vector<ExchangeRate>& rates);

} // namespace pourbook

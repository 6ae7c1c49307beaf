// Two goals at once, as JSON and as text.
#pragma once

#include "questions/rank/tradeoff.hpp"

#include <string>

namespace pourbook {

std::string json_of(const TradeoffResult& result, const Catalogue& catalogue);
std::string text_of(const TradeoffResult& result, const Catalogue& catalogue);

} // namespace pourbook

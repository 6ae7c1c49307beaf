// Two goals at once: whom no other beats in both, joined by a line in steps, the rest in grey behind.
#pragma once

#include "charts/point_chart.hpp"
#include "charts/words.hpp"
#include "questions/rank/tradeoff.hpp"

namespace pourbook {

/// A goal that is one property is drawn in that property's unit; a formula of several relative to the best metal's
/// median. Draw it with layout(const PointChart&, ...).
PointChart tradeoff_chart(const Catalogue& catalogue, const TradeoffResult& result, UnitSystem units,
                          const std::vector<std::string>& pinned);

} // namespace pourbook

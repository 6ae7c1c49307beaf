// One property against another, a point per metal.
#pragma once

#include "charts/point_chart.hpp"
#include "charts/words.hpp"
#include "questions/metals/compare.hpp"

namespace pourbook {

/// `result` has two numeric properties: the first goes along, the second up. Metals without one of them are counted in
/// a note. Errors: unreadable (a property is no number).
Result<PointChart> scatter_chart(const Catalogue& catalogue, const CompareResult& result, UnitSystem units,
                                 const std::vector<std::string>& pinned);

} // namespace pourbook

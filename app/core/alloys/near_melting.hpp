// Melting range of an alloy of several main elements from what is known nearby: cited alloys of the same elements and
// the binary diagrams on the edges of the system. The nearest six within 25 wt% (half the sum of the differences in per
// cent by mass) are averaged with the weight 1 / distance^3. It sees no ternary eutectic between its points.
// Range: a known point within 12 wt%. Error: error_table.hpp, left-one-out over the known alloys.
#pragma once

#include "core/alloys/melting.hpp"

namespace pourbook {

/// Errors: no_value (nothing known near enough).
Result<MeltingEstimate> melting_from_neighbours(const AlloySetting& setting);

} // namespace pourbook

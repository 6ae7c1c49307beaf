// The parts of a resistivity or conductivity that are drawn apart, so that samples keep to physics.
//
// An alloy: the host's resistivity, whose draw all its alloys share, plus an excess that is never negative
// (Matthiessen's rule); no sample of an alloy then conducts better than its host. Where the cited figure lies at or
// below the host's, the excess is half of its uncertainty. A pure metal below 100 K, unless its residual resistivity
// ratio is given: the ideal part plus a residual part. The ratio is assumed: nine in ten lie between 20 and 300 as
// supplied, 5 and 100 as cast (common practice, no source); it decides the value there, and the trail says so.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

constexpr double residual_below_K = 100;

/// Property resistivity or conductivity; any other is left as it is.
void add_draw_parts(Evaluated& value, const Catalogue& catalogue, const Metal& metal, const std::string& property,
                    const Conditions& conditions);

} // namespace pourbook

// Fall times of many samples of one set-up, from a few falls.
//
// ln(time) = g(ln(conductivity) + ln(drag factor / mass)) + d ln(drag factor / mass) + e ln(length), g on Chebyshev
// nodes over the samples' range, d and e by central differences in the middle. While drag is linear in speed this is
// exact but for the run-up and the ends (d = 0): differences from the fall itself stay below 0.1 % for spreads up to a
// factor of two (tests/unit/eddy).
#pragma once

#include "core/eddy/drop_model.hpp"

namespace pourbook::eddy {

/// conductivities_S_m[i] goes with variations[i].
std::vector<double> fall_times_s(const DropModel& model, const std::vector<double>& conductivities_S_m,
                                 const std::vector<Variation>& variations);

} // namespace pourbook::eddy

// What would turn a comparison of two castings: computed, for each quantity that is drawn in one of them (a foreign
// element left in the metal, the pores) the amount at which the two merits are equal with all else at its middle; and
// each other treatment of one of them, by the samples.
// Range looked at: contents from none to 0.1 %, or twice the upper end drawn where that is more; pores to 15 %.
#pragma once

#include "questions/rank/versus.hpp"

namespace pourbook {

/// Fills flips and flip_sentence of a result whose sides are in order.
void find_flips(VersusResult& result, const Catalogue& catalogue, const GoalPlan& plan, std::size_t samples,
                std::uint64_t seed);

} // namespace pourbook

// The columns about the tube in a ranking by a fall, in the units and the currency chosen; both fronts show them.
#pragma once

#include "questions/rank/rank.hpp"
#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct TubeColumn {
    const char* id;
    std::string head;
    Holding held; // the same in every row of this holding
    double RankedTube::*amount;
    double unit_si;

    double number(const RankedTube& tube) const { return tube.*amount / unit_si; }
};

/// Wall, mass and cost.
std::vector<TubeColumn> tube_columns(const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook

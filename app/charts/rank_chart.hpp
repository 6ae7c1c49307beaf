// A ranking as a chart: a row per metal, best on top, median with its 90 % interval.
// A goal that is one property is drawn in that property's unit; a formula of several relative to the best metal's
// median.
#pragma once

#include "charts/canvas.hpp"
#include "charts/words.hpp"
#include "questions/rank/rank.hpp"

namespace pourbook {

struct RankRow {
    std::string id, name;
    double median = 0, low = 0, high = 0; // as drawn
    std::string value;                    // median as text
    std::string hover;
    bool tied_with_best = false;
    bool remembered = false; // rests on a remembered value
    bool pinned = false;
    std::size_t slot = 0; // mark of a pinned one
    std::size_t rank = 0;
    std::vector<std::string> sources;
};

struct RankChart {
    std::string title, axis_label;
    std::vector<RankRow> rows; // the first ones: more than any picture has room for; and all that are pinned
    Origin origin;             // without sources: those of the rows shown count
    std::size_t beyond = 0;    // ranked after these rows
    bool varied = true;        // else there are no intervals
};

RankChart rank_chart(const Catalogue& catalogue, const RankResult& result, UnitSystem units,
                     const std::vector<std::string>& pinned);

/// As many rows as there is room for, the pinned among them wherever they stand; says how many more there are. The
/// first is marked in words; a pinned metal has its own colour and mark. The axis is logarithmic where the medians
/// shown differ by more than a factor of 30. Hits: id is the metal's slug.
Scene layout(const RankChart& chart, const Canvas& canvas);

} // namespace pourbook

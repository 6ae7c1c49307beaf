// Metals as points between two axes, with error bars: two properties against each other, or two goals at once.
#pragma once

#include "charts/canvas.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct PointReach {
    double middle = 0, low = 0, high = 0; // in the unit shown; 90 % interval
};

struct PointMark {
    std::string id, name;
    PointReach x, y;
    std::string hover;
    bool faded = false;      // drawn in grey behind the others, named last
    bool remembered = false; // rests on a remembered value: a hollow mark
    bool pinned = false;
    std::size_t slot = 0; // mark of a pinned one
};

struct PointChart {
    std::string title, subtitle;
    std::string x_label, y_label;
    std::vector<PointMark> points; // those named first in front
    std::vector<Spot> line;        // joined as it stands, in the units shown; empty: none
    std::vector<std::string> notes;
    Origin origin;
};

/// An axis is logarithmic where its figures differ by more than a factor of 30 and are all above zero. A name that
/// finds no free place near its point is left out, and a note says how many. Hits: id is the metal's slug.
Scene layout(const PointChart& chart, const Canvas& canvas);

} // namespace pourbook

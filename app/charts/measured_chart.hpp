// A measured conductivity as a band across an axis, and the metals one owns or asks about on their own lines: those it
// may be are the ones the band touches.
#pragma once

#include "charts/canvas.hpp"
#include "questions/workshop/measured_beside.hpp"

namespace pourbook {

struct MeasuredChart {
    std::string title;
    MeasuredBeside beside;
};

/// Points of height it needs.
double height_of(const MeasuredChart& chart);
/// Hits: id is the metal's slug.
Scene layout(const MeasuredChart& chart, const Canvas& canvas);

} // namespace pourbook

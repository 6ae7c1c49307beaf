// The axes of a chart of curves.
#pragma once

#include "charts/axis.hpp"
#include "charts/curve_chart.hpp"

namespace pourbook {

/// All that its lines need.
Axis horizontal_axis(const CurveChart& chart);

/// What its lines, marks and levels need between the ends of `seen`. A logarithmic one begins where few values lie
/// lower: a metal that loses its resistance in the cold squeezes nothing.
Axis vertical_axis(const CurveChart& chart, const Axis& seen);

} // namespace pourbook

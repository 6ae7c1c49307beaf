// What hands do to a chart with two axes: the wheel goes nearer at the pointer (over an axis: along that one alone), a
// drag moves, a double click shows all again; a cross-hair reads every line at once in a strip above the chart, a click
// leaves a mark to compare with; a handle that the view sets is pulled. With the keyboard: arrows, +
// and -, Home, Space.
#pragma once

#include "charts/curve_chart.hpp"
#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>
#include <vector>

namespace pourbook {

/// How the lines of a chart are read at a place of its horizontal axis.
struct PlotReader {
    std::function<std::vector<CurveReading>(double x)> read;
    std::function<std::string(double x)> place; // "at 27 °C"
    std::optional<double> usual = {};           // read while nobody points anywhere
};

/// Of the chart that was the last item, drawn with its upper left corner at `origin`. `clicked`: a click that was no
/// drag. Changes ui.plots[id]; draws the cross-hair.
void use_plot(Ui& ui, const std::string& id, const Scene& scene, ImVec2 origin, bool clicked, bool hovered);

/// Room the strip takes above a chart this wide, in pixels.
float strip_height(const Ui& ui, std::size_t lines, float width);
/// The strip at the cursor: what every line says at the cross-hair, and against the first or against the mark.
void draw_strip(Ui& ui, const std::string& id, const PlotReader& reader, std::size_t lines, float width);

/// A part of a chart's key: another text where another range is seen.
std::string range_key(const PlotRange& range);

} // namespace pourbook

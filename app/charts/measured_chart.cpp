#include "charts/measured_chart.hpp"

#include "charts/marker.hpp"
#include "charts/place_text.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double measured_row = 22, measured_tallest = 46, measured_head = 28;
constexpr double measured_upright = 350; // points, below which a name stands above its figure

std::string words_for(const BesideMetal& m) {
    return m.metal->name + (m.named ? " (as you named it)" : m.owned ? " (on the shelf)" : "");
}

Axis axis_of(const MeasuredBeside& beside) {
    Axis axis{beside.low90, beside.high90};
    for (const BesideMetal& m : beside.metals) {
        axis.low = std::min(axis.low, m.low90);
        axis.high = std::max(axis.high, m.high90);
    }
    axis.log = axis.low > 0 && axis.high > log_beyond / 3 * axis.low;
    if (!axis.log) axis.low = std::min(axis.low, 0.0);
    round_out(axis);
    return axis;
}

void add_metal(Scene& scene, const Canvas& canvas, const BesideMetal& m, std::size_t place, const Axis& axis,
               double left, double y, double row) {
    const bool above = canvas.width < measured_upright;
    const Palette& colours = canvas.palette;
    const Colour ink = m.agrees ? colours.ink : colours.dim;
    const std::size_t slot = canvas.slot(m.metal->slug, place);
    const double low = axis.place(std::max(m.low90, axis.low)), high = axis.place(m.high90);
    if (above)
        scene.parts.push_back(
            Text{{chart_margin, y - label_line},
                 shortened(words_for(m), canvas.width - 2 * chart_margin, TextStyle::label, canvas.measure),
                 ink});
    else
        scene.parts.push_back(Text{{left - 20, y},
                                   shortened(words_for(m), left - 20 - chart_margin, TextStyle::label, canvas.measure),
                                   ink,
                                   Anchor::end});
    if (!above) add_marker(scene, slot, {left - 10, y}, 4, colours.of_slot(slot));
    scene.parts.push_back(Polyline{{{low, y}, {high, y}}, ink, 2});
    add_marker(scene, slot, {axis.place(m.iacs), y}, 4.5, colours.of_slot(slot));
    if (m.agrees) scene.parts.push_back(Text{{high + row_gap, y}, "fits", colours.ink});
    scene.hits.push_back({{0, y + (above ? label_line / 2 : 0) - row / 2, canvas.width, row},
                          m.metal->slug,
                          m.metal->name + "\n" + significant(m.iacs, 3) + " %IACS, 90 %: " + significant(m.low90, 3) +
                              " to " + significant(m.high90, 3)});
}

} // namespace

double height_of(const MeasuredChart& chart) {
    return measured_head + measured_row * static_cast<double>(chart.beside.metals.size()) + 3 * label_line +
           chart_margin;
}

Scene layout(const MeasuredChart& chart, const Canvas& canvas) {
    Scene scene;
    scene.width = canvas.width;
    scene.height = canvas.height;
    const MeasuredBeside& beside = chart.beside;
    const double top = add_head(scene, canvas, chart.title, "");
    double names = 60;
    for (const BesideMetal& m : beside.metals)
        names = std::max(names, canvas.measure.width(words_for(m), TextStyle::label) + 24);
    const bool above = canvas.width < measured_upright;
    const double left = chart_margin + (above ? 8 : std::min(names, canvas.width * 0.5));
    const double rows = static_cast<double>(std::max<std::size_t>(1, beside.metals.size()));
    const double row = std::clamp((canvas.height - top - 3.5 * label_line - chart_margin) / rows,
                                  above ? 2.0 * label_line : measured_row, measured_tallest);
    const Box plot{left, top, std::max(60.0, canvas.width - left - 50), row * rows};
    Axis axis = axis_of(beside);
    axis.from = plot.x;
    axis.to = plot.right();
    const double low = axis.place(std::max(beside.low90, axis.low)), high = axis.place(beside.high90);
    scene.parts.push_back(
        Rectangle{{low, plot.y, std::max(1.0, high - low), plot.height}, canvas.palette.accent.with_alpha(70)});
    const double at = axis.place(beside.iacs);
    scene.parts.push_back(Polyline{{{at, plot.y}, {at, plot.bottom()}}, canvas.palette.accent, 2});
    add_horizontal_axis(scene, canvas, axis, plot);
    for (std::size_t i = 0; i < beside.metals.size(); ++i)
        add_metal(scene, canvas, beside.metals[i], i, axis, left,
                  plot.y + (static_cast<double>(i) + 0.5) * row + (above ? label_line / 2 : 0), row);
    double y = plot.bottom() + 1.5 * label_line + 4;
    for (const std::string& line :
         fitted_lines("conductivity, %IACS · band: your measurement, 90 % · bars: 90 % of each metal",
                      canvas.width - 2 * chart_margin, above ? 2 : 1, TextStyle::label, canvas.measure)) {
        scene.parts.push_back(Text{{chart_margin, y}, line, canvas.palette.dim});
        y += label_line;
    }
    return scene;
}

} // namespace pourbook

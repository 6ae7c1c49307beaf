// A binary phase diagram as a chart: lines, names of the fields, published points, and one composition with its tie
// line and the shares of the phases.
#pragma once

#include "charts/canvas.hpp"
#include "charts/words.hpp"
#include "questions/mix/phase_diagram.hpp"

namespace pourbook {

struct DiagramChartLine {
    std::vector<Spot> spots;         // content and temperature, in the units shown
    bool melting = true;             // liquidus and solidus; else solvus and three-phase lines
    std::vector<std::string> hovers; // a text for each spot
};

struct DiagramChartPoint {
    double x = 0, y = 0;
    std::string hover;
};

struct DiagramTie {
    double y = 0, left = 0, right = 0; // equal ends: one phase
    std::vector<std::string> words;    // what stands at the left and right end
};

struct DiagramChart {
    std::string title, x_label, y_label;
    double x_low = 0, x_high = 100, y_low = 0, y_high = 1;
    std::vector<DiagramChartLine> lines;
    DiagramFields fields;
    std::vector<DiagramChartPoint> published;
    std::optional<double> upright; // the composition
    std::string upright_label, upright_hover;
    std::optional<DiagramTie> tie;
    std::vector<std::string> notes;
    Origin origin;
};

/// `name`: how the composition is called on the chart.
DiagramChart diagram_chart(const Catalogue& catalogue, const PhaseDiagram& diagram, const std::string& name,
                           UnitSystem units);

/// Hits: id is "line", "published" or "composition".
Scene layout(const DiagramChart& chart, const Canvas& canvas);

} // namespace pourbook

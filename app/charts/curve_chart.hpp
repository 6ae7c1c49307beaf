// A property against temperature as a chart: a line per metal with its 90 % band, printed points as marks, a dashed
// jump where it melts, gaps where nothing is cited.
#pragma once

#include "charts/canvas.hpp"
#include "charts/words.hpp"
#include "questions/metals/curve.hpp"

#include <optional>

namespace pourbook {

struct CurveSpot {
    double x = 0, y = 0, low = 0, high = 0; // in the units shown; 90 % interval
    std::string hover;
};

struct CurveLine {
    std::string id, name;
    std::size_t slot = 0;                          // colour and mark
    std::vector<std::vector<CurveSpot>> stretches; // without gaps inside
    std::vector<std::pair<CurveSpot, CurveSpot>> jumps;
    std::string jump_label;
    std::vector<CurveSpot> printed;
    std::vector<bool> by_law = {}; // of each stretch: carried or estimated, drawn thin; empty: none is
};

/// A single figure with its name beside it.
struct CurveMark {
    double x = 0, y = 0, low = 0, high = 0;
    std::string id, label, hover;
};

/// A place on the horizontal axis to be pointed out.
struct CurveUpright {
    double x = 0;
    std::string label;
};

/// A dashed line across the whole plot.
struct CurveLevel {
    double y = 0;
    std::string label;
};

struct CurveChart {
    std::string title, x_label, y_label;
    bool log = false;
    std::vector<CurveLine> lines;
    std::vector<std::string> notes; // metals without a curve, and why
    Origin origin;
    std::string legend = "marks: printed figures · band: 90 % · dashed: melting";
    std::vector<CurveMark> marks = {};
    std::optional<CurveUpright> upright = {};
    std::optional<std::pair<double, double>> x_range = {}; // else what the lines need
    bool log_x = false;
    std::vector<CurveLevel> levels = {};
};

struct CurveLook {
    bool log = false;
    bool celsius = false;
    UnitSystem units = UnitSystem::shown;
};

CurveChart curve_chart(const Catalogue& catalogue, const CurveResult& result, const CurveLook& look);

/// Hits: id is the metal's slug.
Scene layout(const CurveChart& chart, const Canvas& canvas);

} // namespace pourbook

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

/// Where one source's figures end and another's go on.
struct CurveJoin {
    CurveSpot before, after;
    std::string words;
};

struct CurveLine {
    std::string id, name;
    std::size_t slot = 0;                          // colour and mark
    std::vector<std::vector<CurveSpot>> stretches; // without gaps inside
    std::vector<std::pair<CurveSpot, CurveSpot>> jumps;
    std::string jump_label;
    std::vector<CurveSpot> printed;
    std::vector<bool> by_law = {};     // of each stretch: carried or estimated, drawn thin; empty: none is
    std::vector<bool> remembered = {}; // of each stretch: from memory, drawn dashed; empty: none is
    std::vector<CurveJoin> joins = {};
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
    std::string legend = "marks: printed figures · band: 90 % · thin upright: melting";
    std::vector<CurveMark> marks = {};
    std::optional<CurveUpright> upright = {};
    std::optional<std::pair<double, double>> x_range = {}; // else what the lines need
    bool log_x = false;
    std::vector<CurveLevel> levels = {};
};

struct CurveLook {
    bool log = false;
    bool celsius = false;
    bool log_t = false; // the temperature too, in kelvin
    UnitSystem units = UnitSystem::shown;
};

/// What a line says at one place.
struct CurveReading {
    std::string id, name;
    std::size_t slot = 0;
    double value = no_number; // in the unit shown; NaN: nothing is cited there
    std::string text;         // with its 90 % interval, or why there is none
};

/// Of every line, between its spots; "no value" in a gap.
std::vector<CurveReading> readings_at(const CurveChart& chart, double x);
/// The same evaluated at this very temperature (in the unit of the look).
std::vector<CurveReading> readings_at(const Catalogue& catalogue, const CurveResult& result, const CurveLook& look,
                                      double temperature);

CurveChart curve_chart(const Catalogue& catalogue, const CurveResult& result, const CurveLook& look);

/// Hits: id is the metal's slug.
Scene layout(const CurveChart& chart, const Canvas& canvas);

} // namespace pourbook

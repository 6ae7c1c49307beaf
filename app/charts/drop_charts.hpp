// What Drop shows as charts: fall times of several metals as bars, drag against speed, fall time against what is swept.
#pragma once

#include "charts/curve_chart.hpp"
#include "questions/drop/drag.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/workshop/measured_falls.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct FallRow {
    std::string id, name;
    std::size_t slot = 0;
    double time_s = 0, low_s = 0, high_s = 0; // 90 % interval
    std::string value, hover;
    std::vector<double> measured_s;
    std::string problem; // why this metal makes no such tube; then without a time
};

struct FallChart {
    std::string title, subtitle;
    std::vector<FallRow> rows;
    double free_fall_s = 0;
    Origin origin;
};

/// Keys of the sources of magnet and metals, each once, the conditions and the data version.
Origin origin_of(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops);

/// Measured times are drawn on the computed bars.
FallChart fall_chart(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, UnitSystem units,
                     const MeasuredFalls& measured);

/// Hits: id is the metal's slug.
Scene layout(const FallChart& chart, const Canvas& canvas);

/// Drag against speed of each metal, with the magnet's weight, terminal speeds and peaks; speeds in m/s, forces in N.
CurveChart drag_chart(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, UnitSystem units);

/// Fall time against what is swept.
CurveChart sweep_chart(const Catalogue& catalogue, const SweepResult& result, UnitSystem units);

} // namespace pourbook

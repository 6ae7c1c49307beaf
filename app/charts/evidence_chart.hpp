// The evidence for one value as a number line: each source a dot (filled where read, hollow where remembered, ringed
// where it is the one chosen), our 90 % interval as a band behind them.
#pragma once

#include "charts/canvas.hpp"
#include "charts/words.hpp"
#include "core/evaluate/evaluate.hpp"

namespace pourbook {

struct EvidenceDot {
    std::string id, name;
    double value = 0; // in the unit shown
    bool remembered = false, chosen = false;
    std::string hover;
};

struct EvidenceChart {
    std::string label; // of the axis: "conductivity, MS/m"
    double value = 0, low = 0, high = 0;
    std::vector<EvidenceDot> dots;
};

EvidenceChart evidence_chart(const Catalogue& catalogue, const Property& property, const Evaluated& value,
                             UnitSystem units);

/// Points of height it needs.
double height_of(const EvidenceChart& chart);
/// Hits: id is the source's key.
Scene layout(const EvidenceChart& chart, const Canvas& canvas);

} // namespace pourbook

// Conductivity (or resistivity) against composition of a binary system: an estimate with its 90 % band for each
// treatment, the measured alloys of the reference as named points, and one composition pointed out.
#pragma once

#include "charts/curve_chart.hpp"
#include "questions/mix/mix_curve.hpp"

namespace pourbook {

struct MixChartLook {
    bool resistivity = false;                     // else conductivity in %IACS
    std::optional<CurveUpright> composition = {}; // wt% of the second element
};

/// The curves are of one system, one for each treatment. Hits: id is a metal's slug, or a treatment.
CurveChart mix_chart(const Catalogue& catalogue, const std::vector<MixCurve>& curves, const MixChartLook& look);

} // namespace pourbook

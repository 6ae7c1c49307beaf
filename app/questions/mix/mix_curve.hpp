// Conductivity against composition of a binary system: the estimate with its 90 % band beside the alloys of the
// reference that were measured, and the system's diagram.
#pragma once

#include "core/alloys/estimate.hpp"

#include <vector>

namespace pourbook {

struct MixCurveRequest {
    std::string a, b; // chemical symbols
    Treatment treatment = Treatment::annealed;
    int steps = 100;
};

struct MixCurvePoint {
    double wt_b = 0;
    double conductivity_si = no_number, low90_si = no_number, high90_si = no_number; // NaN where there is no rule
};

struct MeasuredAlloy {
    const Metal* metal = nullptr;
    double wt_b = 0;
    double conductivity_si = 0;
    double standard_uncertainty_si = 0;
    std::string condition;
};

struct MixCurve {
    std::string a, b;
    Treatment treatment = Treatment::annealed;
    const Diagram* diagram = nullptr;    // null: none is stored; its axis runs in per cent of Diagram::b
    std::vector<MixCurvePoint> points;   // rising in wt_b
    std::vector<MeasuredAlloy> measured; // metals of the reference with at least 99.5 wt% of the two elements
    std::vector<std::string> sources;    // keys, of the estimates
};

/// Errors: unknown element.
Result<MixCurve> mix_curve(const Catalogue& catalogue, const MixCurveRequest& request);

} // namespace pourbook

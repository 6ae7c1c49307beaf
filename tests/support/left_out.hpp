// Every cited point that a law could have predicted from the others, left out and predicted: for the errors of the laws
// (tests/laws/left_out, help page "laws").
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook::testing {

struct LeftOutPoint {
    std::string metal;
    bool element = false;
    double temperature_K = 0;
    double cited = 0, cited_u = 0, predicted = 0, predicted_u = 0;
    Basis basis = Basis::carried;

    double error() const { return predicted / cited - 1; }
    bool inside_90() const;
};

/// Of a property in a phase: the answer at each printed temperature against the law's without what is printed within
/// 15 K of it (all of it for a property without temperature).
std::vector<LeftOutPoint> leave_each_out(const Catalogue& catalogue, const std::string& property, Phase phase);

struct LawErrors {
    std::size_t n = 0;
    double median = 0;       // of |error|
    double share_inside = 0; // of the 90 % interval
};
LawErrors errors_of(const std::vector<LeftOutPoint>& points);

} // namespace pourbook::testing

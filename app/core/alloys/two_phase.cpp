#include "core/alloys/two_phase.hpp"

#include <algorithm>

namespace pourbook {

double maxwell_conductivity(const std::vector<PhasePart>& parts) {
    const auto matrix = std::max_element(parts.begin(), parts.end(), [](const PhasePart& x, const PhasePart& y) {
        return x.volume_share < y.volume_share;
    });
    const double m = matrix->conductivity_si;
    double b = 0;
    for (const PhasePart& p : parts) b += p.volume_share * (p.conductivity_si - m) / (p.conductivity_si + 2 * m);
    return m * (1 + 2 * b) / (1 - b);
}

double parallel_conductivity(const std::vector<PhasePart>& parts) {
    double sum = 0;
    for (const PhasePart& p : parts) sum += p.volume_share * p.conductivity_si;
    return sum;
}

double series_conductivity(const std::vector<PhasePart>& parts) {
    double sum = 0;
    for (const PhasePart& p : parts) sum += p.volume_share / p.conductivity_si;
    return 1 / sum;
}

} // namespace pourbook

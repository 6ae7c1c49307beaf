#include "core/eddy/elliptic.hpp"

#include <cmath>
#include <numbers>

namespace pourbook::eddy {

CompleteElliptic complete_elliptic(double k) {
    double mean = 1, root = std::sqrt((1 - k) * (1 + k)), difference = k;
    double weight = 0.5, lost = 0.5 * k * k; // lost = sum of 2^(n-1) c_n^2, E = K (1 - lost)
    constexpr int most_steps = 12;           // it converges quadratically; K of the largest k below 1 takes 8
    for (int i = 0; i < most_steps && difference > 1e-17 * mean; ++i) {
        difference = (mean - root) / 2;
        const double next = (mean + root) / 2;
        root = std::sqrt(mean * root);
        mean = next;
        weight *= 2;
        lost += weight * difference * difference;
    }
    const double first = std::numbers::pi / (2 * mean);
    return {first, first * (1 - lost)};
}

} // namespace pourbook::eddy

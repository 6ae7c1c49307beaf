// Gauss-Legendre quadrature of fixed order on an interval.
#pragma once

#include <array>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {

template <int n> struct GaussRule {
    std::array<double, n> node{}, weight{}; // on -1..1
};

/// Nodes by Newton's method on the Legendre polynomial, to the last digit.
template <int n> const GaussRule<n>& gauss_rule() {
    static const GaussRule<n> rule = [] {
        GaussRule<n> r;
        for (int i = 0; i < n; ++i) {
            double x = std::cos(std::numbers::pi * (i + 0.75) / (n + 0.5)), slope = 1;
            for (int turn = 0; turn < 100; ++turn) {
                double p = 1, before = 0;
                for (int k = 1; k <= n; ++k) {
                    const double next = ((2 * k - 1) * x * p - (k - 1) * before) / k;
                    before = p;
                    p = next;
                }
                slope = n * (x * p - before) / (x * x - 1);
                const double step = p / slope;
                x -= step;
                if (std::abs(step) < 1e-16) break;
            }
            const auto at = static_cast<std::size_t>(i);
            r.node[at] = x;
            r.weight[at] = 2 / ((1 - x * x) * slope * slope);
        }
        return r;
    }();
    return rule;
}

template <int n, class F> double integral(F f, double low, double high) {
    const GaussRule<n>& rule = gauss_rule<n>();
    const double half = (high - low) / 2, middle = (high + low) / 2;
    double sum = 0;
    for (std::size_t i = 0; i < n; ++i) sum += rule.weight[i] * f(middle + half * rule.node[i]);
    return half * sum;
}

} // namespace pourbook::eddy

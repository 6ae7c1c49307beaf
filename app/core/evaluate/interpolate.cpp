#include "core/evaluate/interpolate.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

struct Slopes {
    const Points& p;

    double secant(std::size_t i) const {
        return (p[i + 1]->value_si - p[i]->value_si) / (p[i + 1]->temperature_K - p[i]->temperature_K);
    }
    double width(std::size_t i) const { return p[i + 1]->temperature_K - p[i]->temperature_K; }

    double at(std::size_t i) const {
        if (p.size() == 2) return secant(0);
        if (i == 0) return end(secant(0), secant(1), width(0), width(1));
        const std::size_t last = p.size() - 1;
        if (i == last) return end(secant(last - 1), secant(last - 2), width(last - 1), width(last - 2));
        const double before = secant(i - 1), after = secant(i);
        if (before * after <= 0) return 0;
        const double w1 = 2 * width(i) + width(i - 1), w2 = width(i) + 2 * width(i - 1);
        return (w1 + w2) / (w1 / before + w2 / after);
    }

    /// Three-point slope at an end, limited so that it keeps the sign of the first secant and its size below three
    /// times it.
    static double end(double near, double far, double near_width, double far_width) {
        const double slope = ((2 * near_width + far_width) * near - near_width * far) / (near_width + far_width);
        if (slope * near <= 0) return 0;
        return std::abs(slope) > 3 * std::abs(near) ? 3 * near : slope;
    }
};

} // namespace

Interpolated interpolate(const Points& points, double temperature_K) {
    if (points.empty()) return {};
    const auto exact = [](const Point& p) { return Interpolated{p.value_si, 0, p.half_digit_si}; };
    if (temperature_K <= points.front()->temperature_K) return exact(*points.front());
    if (temperature_K >= points.back()->temperature_K) return exact(*points.back());

    const auto above = std::upper_bound(points.begin(), points.end(), temperature_K,
                                        [](double t, const Point* p) { return t < p->temperature_K; });
    const auto i = static_cast<std::size_t>(above - points.begin()) - 1;
    const Point &a = *points[i], &b = *points[i + 1];
    const double h = b.temperature_K - a.temperature_K;
    const double t = (temperature_K - a.temperature_K) / h;
    const Slopes slopes{points};
    const double cubic = (1 + 2 * t) * (1 - t) * (1 - t) * a.value_si + t * t * (3 - 2 * t) * b.value_si +
                         h * t * (1 - t) * ((1 - t) * slopes.at(i) - t * slopes.at(i + 1));
    const double straight = a.value_si + t * (b.value_si - a.value_si);
    return {cubic, std::abs(cubic - straight) / 2, (1 - t) * a.half_digit_si + t * b.half_digit_si};
}

Interpolated interpolate(const std::vector<Point>& points, double temperature_K) {
    Points each;
    for (const Point& p : points) each.push_back(&p);
    return interpolate(each, temperature_K);
}

} // namespace pourbook

#include "charts/curve_axes.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace pourbook {
namespace {

void for_each_spot(const CurveChart& chart, const std::function<void(const CurveSpot&)>& use) {
    for (const CurveLine& line : chart.lines)
        for (const auto& stretch : line.stretches)
            for (const CurveSpot& s : stretch) use(s);
}

/// A fifth of the value that one in twenty lies below.
double where_few_lie_lower(std::vector<double> values) {
    if (values.empty()) return 0;
    const auto place = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 20);
    std::nth_element(values.begin(), place, values.end());
    return *place / 5;
}

} // namespace

Axis horizontal_axis(const CurveChart& chart) {
    Axis x{no_number, no_number};
    for_each_spot(chart, [&](const CurveSpot& s) {
        x.low = std::fmin(x.low, s.x); // fmin and fmax pass over NaN
        x.high = std::fmax(x.high, s.x);
    });
    if (chart.x_range) {
        x.low = chart.x_range->first;
        x.high = chart.x_range->second;
        return x;
    }
    x.log = chart.log_x && x.low > 0;
    if (x.log) {
        round_out(x);
        return x;
    }
    if (x.low > 0 && x.low < 0.4 * x.high) x.low = 0;
    const double room = std::max(1.0, 0.02 * (x.high - x.low)); // never rounded out: no axis goes below absolute zero
    x.high += room;
    if (x.low == x.high - room) x.low -= room;
    return x;
}

Axis vertical_axis(const CurveChart& chart, const Axis& seen) {
    Axis y{no_number, no_number, chart.log};
    double lowest = no_number;
    std::vector<double> values;
    for_each_spot(chart, [&](const CurveSpot& s) {
        lowest = std::fmin(lowest, s.y);
        if (s.x < seen.low || s.x > seen.high || (y.log && s.y <= 0)) return;
        values.push_back(s.y);
        y.low = std::fmin(y.low, y.log ? s.y : s.low);
        y.high = std::fmax(y.high, y.log ? s.y : s.high);
    });
    if (y.log) y.low = std::fmax(y.low, where_few_lie_lower(std::move(values)));
    for (const CurveMark& m : chart.marks) {
        y.low = std::fmin(y.low, y.log ? m.y : m.low);
        y.high = std::fmax(y.high, y.log ? m.y : m.high);
    }
    for (const CurveLevel& level : chart.levels) {
        y.low = std::fmin(y.low, level.y);
        y.high = std::fmax(y.high, level.y);
    }
    if (std::isnan(y.low)) y.low = y.high = 1;
    if (!y.log && y.low < 0 && lowest >= 0) y.low = 0; // a band may reach below zero where no value does
    round_out(y);
    return y;
}

} // namespace pourbook

#include "core/evaluate/curie.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double steeper = 1.3, knee_doubt = 0.06, close_enough_K = 60;

double cited_curie_K(const Metal& metal) {
    for (const Record& r : metal.records)
        if (r.property == "curie_temperature" && r.usable() && !r.points.empty()) return r.points.front().value_si;
    return no_number;
}

} // namespace

void across_curie_point(Candidate& c, const Points& points, const Question& q) {
    if (c.record->property != "resistivity" || c.gap_K < close_enough_K) return;
    const double curie = cited_curie_K(q.metal);
    const Point &a = *c.first, &b = *c.second;
    if (!(curie > a.temperature_K && curie < b.temperature_K)) return;
    const auto at = std::find(points.begin(), points.end(), &a);
    if (at == points.begin()) return;
    const Point& before = **(at - 1);
    const double slope = steeper * (a.value_si - before.value_si) / (a.temperature_K - before.temperature_K);
    const double knee = std::min(a.value_si + slope * (curie - a.temperature_K), b.value_si);
    const double t = q.temperature_K;
    c.value_si = t <= curie ? a.value_si + (knee - a.value_si) * (t - a.temperature_K) / (curie - a.temperature_K)
                            : knee + (b.value_si - knee) * (t - curie) / (b.temperature_K - curie);
    c.recorded_si = c.value_si;
    c.doubt_si = knee_doubt * c.value_si;
}

} // namespace pourbook

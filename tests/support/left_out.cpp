#include "support/left_out.hpp"

#include "core/evaluate/cited.hpp"
#include "core/laws/answer.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::testing {
namespace {

constexpr double near_K = 15, apart_K = 2;

/// The metal without what its records of the question's property print near a temperature.
Metal without(const Question& q, double temperature_K) {
    Metal out = q.metal;
    for (const Record* r : speaking_records(q)) {
        Record& copy = out.records[static_cast<std::size_t>(r - &q.metal.records.front())];
        if (!q.property.varies_with_temperature || copy.equation) {
            copy.use = Use::disputed;
            continue;
        }
        std::erase_if(copy.points, [&](const Point& p) {
            return !p.is_bound() && std::abs((std::isnan(p.temperature_K) ? room_temperature_K : p.temperature_K) -
                                             temperature_K) < near_K;
        });
        if (copy.points.empty()) copy.use = Use::disputed;
    }
    return out;
}

} // namespace

bool LeftOutPoint::inside_90() const {
    return std::abs(predicted - cited) <= 1.645 * std::hypot(cited_u, predicted_u);
}

std::vector<LeftOutPoint> leave_each_out(const Catalogue& catalogue, const std::string& id, Phase phase) {
    std::vector<LeftOutPoint> out;
    const Property& property = *catalogue.property(id);
    const Conditions conditions;
    for (const Metal& metal : catalogue.metals) {
        double before = -1;
        const Question all{catalogue, metal, property, phase, room_temperature_K, conditions};
        std::vector<double> at =
            property.varies_with_temperature ? printed_temperatures(all) : std::vector<double>{room_temperature_K};
        for (const double t : at) {
            if (t - before < apart_K) continue;
            before = t;
            Question q = all;
            q.temperature_K = t;
            const Result<Evaluated> cited = cited_answer(q);
            if (!cited || cited->basis != Basis::cited) continue;
            const Metal rest = without(q, t);
            const Result<Evaluated> law = law_answer({catalogue, rest, property, phase, t, conditions});
            if (!law) continue;
            out.push_back({metal.slug, metal.is_element(), t, cited->value_si, cited->standard_uncertainty_si,
                           law->value_si, law->standard_uncertainty_si, law->basis});
        }
    }
    return out;
}

LawErrors errors_of(const std::vector<LeftOutPoint>& points) {
    LawErrors e;
    e.n = points.size();
    if (points.empty()) return e;
    std::vector<double> sizes;
    std::size_t inside = 0;
    for (const LeftOutPoint& p : points) {
        sizes.push_back(std::abs(p.error()));
        inside += p.inside_90();
    }
    std::nth_element(sizes.begin(), sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2), sizes.end());
    e.median = sizes[sizes.size() / 2];
    e.share_inside = static_cast<double>(inside) / static_cast<double>(points.size());
    return e;
}

} // namespace pourbook::testing

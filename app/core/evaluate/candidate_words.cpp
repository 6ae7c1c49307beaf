#include "core/evaluate/candidate.hpp"

#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

std::string point_as_printed(const Point& p, const Record& r) {
    const std::string at = std::isnan(p.temperature_K) ? "" : " at " + trimmed(p.temperature_K, 6) + " K";
    return p.printed + (r.unit.empty() ? "" : " " + r.unit) + at;
}

std::string how_carried(const Record& coefficient) {
    return "carried by the temperature coefficient " + coefficient.points.front().printed + " " + coefficient.unit +
           " (" + coefficient.citation.source + ")" +
           (std::isnan(coefficient.valid_low_K) ? ", range 0 to 100 degC assumed by us" : "");
}

std::string how_used(const Candidate& c) {
    const Record& r = *c.record;
    if (!c.first) return "equation of the source";
    if (c.coefficient) return how_carried(*c.coefficient);
    if (c.cover == Cover::mean)
        return "mean over " + trimmed(r.from_K, 6) + " K to " + trimmed(c.first->temperature_K, 6) + " K stands in";
    if (c.second) return "interpolated between printed points";
    if (c.cover == Cover::near)
        return (r.points.size() > 1 ? "end of the series, used " : "single printed point, used ") +
               trimmed(c.away_K, 3) + " K away";
    return r.citation.how_known == HowKnown::computed ? "computed figure" : "printed figure";
}

} // namespace

std::string printed_in(const Candidate& c) {
    if (!c.first) return c.record->equation_printed;
    const std::string first = point_as_printed(*c.first, *c.record);
    return c.second ? first + ", " + point_as_printed(*c.second, *c.record) : first;
}

std::string how_in(const Candidate& c) {
    return how_used(c) + (c.relation ? "; " + std::string(c.relation) : "");
}

} // namespace pourbook

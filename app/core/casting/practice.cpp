#include "core/casting/practice.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::casting {
namespace {

template <class Fits> std::vector<const Practice*> only(const std::vector<const Practice*>& all, Fits fits) {
    std::vector<const Practice*> out;
    std::copy_if(all.begin(), all.end(), std::back_inserter(out), [&](const Practice* p) { return fits(*p); });
    return out;
}

} // namespace

std::vector<const Practice*> practices(const Catalogue& catalogue, const Metal& metal, const std::string& quantity,
                                       const std::string& process) {
    std::vector<const Practice*> fitting;
    for (const Practice& p : catalogue.practices)
        if (p.quantity == quantity && (p.process.empty() || p.process == process)) fitting.push_back(&p);
    auto own = only(fitting, [&](const Practice& p) { return p.metal == metal.slug; });
    if (!own.empty()) return own;
    auto kin = only(fitting, [&](const Practice& p) { return p.metal.empty() && p.family == metal.family; });
    if (!kin.empty()) return kin;
    return only(fitting, [](const Practice& p) { return p.metal.empty() && p.family.empty() && p.element.empty(); });
}

std::vector<const Practice*> of_material(std::vector<const Practice*> all, const std::string& material) {
    return only(all, [&](const Practice& p) { return p.material == material; });
}

std::vector<const Practice*> of_grade(std::vector<const Practice*> all, const std::string& grade) {
    return only(all, [&](const Practice& p) { return p.grade == grade; });
}

Range range_of(const std::vector<const Practice*>& entries) {
    Range r;
    for (const Practice* p : entries) {
        const Point& f = p->figure;
        if (f.is_bound()) continue;
        const double low = std::isnan(f.low_si) ? f.value_si : f.low_si;
        const double high = std::isnan(f.high_si) ? f.value_si : f.high_si;
        r.low_si = std::isnan(r.low_si) ? low : std::min(r.low_si, low);
        r.high_si = std::isnan(r.high_si) ? high : std::max(r.high_si, high);
        r.sources.push_back(source_of(*p));
    }
    return r;
}

Traced traced(const Range& range, const std::string& how) {
    Traced t;
    t.value_si = range.middle();
    t.standard_uncertainty_si = (range.high_si - range.low_si) / 2 / std::sqrt(3.0);
    t.how = how;
    t.sources = range.sources;
    for (const SourceValue& s : range.sources)
        if (s.how_known != HowKnown::read) t.how_known = s.how_known;
    return t;
}

SourceValue source_of(const Practice& p) {
    return {p.citation.source,
            p.citation.locator,
            p.citation.through,
            "casting." + p.quantity,
            "",
            p.figure.printed.empty() ? "" : p.figure.printed + " " + p.unit,
            p.figure.value_si,
            p.citation.how_known,
            true};
}

} // namespace pourbook::casting

#include "questions/metals/curve.hpp"

#include "questions/metals/find_metal.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double lowest_K = 4;

bool speaks_of(const Record& r, const std::string& property) {
    const bool electrical = property == "resistivity" || property == "conductivity";
    return r.property == property || (electrical && (r.property == "resistivity" || r.property == "conductivity"));
}

/// Temperatures worth evaluating: a grid even in kelvin and in ratio, every printed temperature and both sides of the
/// melting range.
std::vector<double> temperatures(const Catalogue& catalogue, const Metal& metal, const CurveRequest& request) {
    std::vector<double> grid;
    double low = no_number, high = no_number;
    for (const Record& r : metal.records) {
        if (!speaks_of(r, request.property) || !r.usable() || std::isnan(r.lowest_K())) continue;
        low = std::isnan(low) ? r.lowest_K() : std::min(low, r.lowest_K());
        high = std::isnan(high) ? r.highest_K() : std::max(high, r.highest_K());
        for (const Point& p : r.points)
            if (!p.is_bound()) grid.push_back(p.temperature_K);
    }
    const auto solidus = evaluate(catalogue, metal, "solidus", {});
    low = std::isnan(low) ? lowest_K : std::min(low, lowest_K);
    if (solidus) high = std::isnan(high) ? solidus->value_si : std::max(high, solidus->value_si);
    if (std::isnan(high)) return {};
    for (int i = 0; i <= request.steps; ++i) grid.push_back(low + (high - low) * i / request.steps);
    for (int i = 0; i <= request.steps / 2; ++i) // dense in the cold, where much happens in few kelvin
        grid.push_back(low * std::pow(high / low, 2.0 * i / request.steps));
    for (const char* edge : {"solidus", "liquidus"})
        if (const auto t = evaluate(catalogue, metal, edge, {})) {
            grid.push_back(t->value_si);
            grid.push_back(t->value_si + 1e-3);
        }
    std::sort(grid.begin(), grid.end());
    grid.erase(std::unique(grid.begin(), grid.end()), grid.end());
    return grid;
}

bool is_printed(const Metal& metal, const CurveRequest& request, double t) {
    for (const Record& r : metal.records)
        if (speaks_of(r, request.property) && r.usable())
            for (const Point& p : r.points)
                if (!p.is_bound() && p.temperature_K == t) return true;
    return false;
}

/// Of what is carried by a law the source may change from point to point: it is the law that is seen.
bool goes_on(const CurveStretch& stretch, bool cited, bool remembered, const std::string& source) {
    return stretch.cited == cited && (!cited || (stretch.source == source && stretch.remembered == remembered));
}

CurveOfMetal curve_of(const Catalogue& catalogue, const Metal& metal, const CurveRequest& request) {
    CurveOfMetal out;
    out.metal = &metal;
    Conditions conditions;
    conditions.condition = request.condition;
    conditions.story = false;
    bool broken = true;
    for (double t : temperatures(catalogue, metal, request)) {
        conditions.temperature_K = t;
        const Result<Evaluated> e = evaluate(catalogue, metal, request.property, conditions);
        if (!e) {
            broken = true;
            out.missing = e.problem().text;
            continue;
        }
        const Phase phase = phase_at(catalogue, metal, t);
        const bool cited = e->basis == Basis::cited;
        const CurvePoint point{t, e->value_si, e->standard_uncertainty_si};
        const bool same_phase = !broken && !out.stretches.empty() && out.stretches.back().phase == phase;
        const bool remembered = cited && e->how_known == HowKnown::memory;
        const std::string& key = e->sources.front().key;
        if (!same_phase || !goes_on(out.stretches.back(), cited, remembered, key)) {
            // From cited to carried the line goes on: the new stretch begins where the old one ends. From one source to
            // another there is a gap.
            std::vector<CurvePoint> begin;
            if (same_phase && out.stretches.back().cited != cited) begin.push_back(out.stretches.back().points.back());
            out.stretches.push_back({phase, cited, remembered, key, std::move(begin)});
        }
        broken = false;
        out.stretches.back().points.push_back(point);
        if (cited && is_printed(metal, request, t)) out.printed.push_back(point);
        if (std::find(out.sources.begin(), out.sources.end(), key) == out.sources.end()) out.sources.push_back(key);
    }
    if (!out.stretches.empty())
        out.missing.clear();
    else if (out.missing.empty())
        out.missing = request.property + " of " + metal.slug + ": no value cited";
    return out;
}

} // namespace

Result<CurveResult> curve(const Catalogue& catalogue, const CurveRequest& request) {
    const Result<const Property*> property = find_property(catalogue, request.property);
    if (!property) return property.problem();
    CurveResult result;
    result.property = *property;
    result.condition = request.condition;
    for (const std::string& word : request.metals) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        result.curves.push_back(curve_of(catalogue, **metal, request));
    }
    return result;
}

} // namespace pourbook

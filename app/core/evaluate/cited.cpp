#include "core/evaluate/cited.hpp"

#include "core/evaluate/default_uncertainty.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double printed_reach_K = 10; // beyond, a printed point no longer counts as cited

/// The uncertainty that the source states, carried from the record's own kind (a conductivity) to the wanted one.
double stated_uncertainty(const Candidate& c) {
    if (!std::isnan(c.record->uncertainty_relative)) return std::abs(c.value_si) * c.record->uncertainty_relative;
    return c.record->uncertainty_si * (c.recorded_si == 0 ? 1 : std::abs(c.value_si / c.recorded_si));
}

bool has_own_range(const Record& r) {
    return r.points.size() == 1 && !std::isnan(r.points.front().low_si) && !std::isnan(r.points.front().high_si);
}

} // namespace

double own_uncertainty(const Candidate& c, const Question& q, bool& assumed) {
    double u = stated_uncertainty(c);
    if (std::isnan(u) && has_own_range(*c.record)) {
        const Point& p = c.record->points.front();
        const double scale = p.value_si == 0 ? 1 : std::abs(c.value_si / p.value_si);
        u = std::abs(p.high_si - p.low_si) / 2 / std::sqrt(3.0) * scale;
    }
    assumed = std::isnan(u);
    if (assumed) {
        // A melting point answers for solidus and liquidus with its own, smaller default.
        const bool same = c.record->property == q.property.id;
        const Property* recorded = same ? &q.property : q.catalogue.property(c.record->property);
        const Property& p = recorded && recorded->dimension == q.property.dimension ? *recorded : q.property;
        u = std::isnan(p.default_uncertainty_si) ? p.default_uncertainty * std::abs(c.value_si)
                                                 : p.default_uncertainty_si;
        u *= source_factor(q.catalogue.reference(c.record->citation.source), c.record->citation.how_known);
    }
    const double rounding = c.half_digit_si / std::sqrt(3.0);
    const double condition = c.fit == ConditionFit::other ? q.property.condition_spread * std::abs(c.value_si) : 0;
    // A defined value (a fixed point of the temperature scale) is printed exactly.
    return std::hypot(u == 0 && !assumed ? 0 : std::max(u, rounding), c.doubt_si, condition);
}

namespace {

SourceValue said_by(const Candidate& c, bool chosen, bool story) {
    const Record& r = *c.record;
    SourceValue s;
    s.key = r.citation.source;
    s.record_id = r.id;
    s.value_si = c.value_si;
    s.how_known = r.citation.how_known;
    s.chosen = chosen;
    if (!story) return s;
    s.locator = r.citation.locator;
    s.through = r.citation.through;
    s.condition = r.condition.empty() ? "unstated" : r.condition;
    s.printed = printed_in(c);
    return s;
}

/// Other sources' values at the same temperature and a condition that is not known to differ.
void add_spread(Evaluated& e, const std::vector<Candidate>& all, const Question& q) {
    e.spread_low_si = e.spread_high_si = e.value_si;
    double half = 0;
    for (std::size_t i = 1; i < all.size(); ++i) {
        const Candidate& c = all[i];
        const bool known = std::any_of(e.sources.begin(), e.sources.end(),
                                       [&](const SourceValue& s) { return s.key == c.record->citation.source; });
        const bool comparable =
            c.cover == Cover::direct && (c.fit != ConditionFit::other || all[0].fit == ConditionFit::other);
        if (known || !comparable) continue;
        e.sources.push_back(said_by(c, false, q.conditions.story));
        e.spread_low_si = std::min(e.spread_low_si, c.value_si);
        e.spread_high_si = std::max(e.spread_high_si, c.value_si);
        bool assumed = false;
        const double away = std::abs(c.value_si - e.value_si);
        if (away > 2 * own_uncertainty(c, q, assumed)) half = std::max(half, away / 2);
    }
    if (half > e.standard_uncertainty_si) {
        e.standard_uncertainty_si = half;
        e.uncertainty_assumed = false;
        if (q.conditions.story) e.trail.push_back("uncertainty widened to cover the spread among sources");
    }
}

/// The trail: what is printed where, and what we made of it.
void tell(Evaluated& e, const Candidate& best) {
    e.trail.push_back(printed_in(best) + ": " + how_in(best) + " [" + best.record->citation.source + ", " +
                      best.record->citation.locator + "]");
    if (!best.record->why.empty()) e.trail.push_back("preferred: " + best.record->why);
    if (!best.record->note.empty()) e.trail.push_back("note: " + best.record->note);
    if (e.uncertainty_assumed) e.trail.push_back("the source states no uncertainty: assumed by us");
    if (!e.condition_matches)
        e.trail.push_back("only another condition is cited (" + e.condition + "): uncertainty widened");
}

Evaluated resolved(const std::vector<Candidate>& all, const Question& q) {
    const Candidate& best = all.front();
    Evaluated e;
    e.value_si = best.value_si;
    e.temperature_K = q.property.varies_with_temperature ? q.temperature_K : no_number;
    e.condition = best.record->condition.empty() ? "unstated" : best.record->condition;
    if (!best.record->temper.empty()) e.condition += " " + best.record->temper;
    if (q.phase == Phase::liquid) e.condition = "liquid";
    e.condition_matches = best.fit != ConditionFit::other;
    e.how_known = best.record->citation.how_known;
    if (best.cover == Cover::carried || best.away_K > printed_reach_K || !e.condition_matches) e.basis = Basis::carried;
    if (e.basis == Basis::carried) e.law = best.coefficient ? "temperature coefficient" : "nearest cited figure";
    if (best.record->id.starts_with("estimate.")) { // of a mix: its records are estimates from composition
        e.basis = Basis::estimated;
        e.law = best.record->citation.locator;
    }
    if (best.cover == Cover::near) e.away_K = best.away_K;
    e.standard_uncertainty_si = own_uncertainty(best, q, e.uncertainty_assumed);
    e.sources.push_back(said_by(best, true, q.conditions.story));
    if (q.conditions.story) tell(e, best);
    add_spread(e, all, q);
    e.causes.push_back({q.metal.slug + "." + q.property.id, e.standard_uncertainty_si / std::abs(e.value_si)});
    return e;
}

bool only_bounds(const Record& r) {
    return !r.points.empty() &&
           std::all_of(r.points.begin(), r.points.end(), [](const Point& p) { return p.is_bound(); });
}

std::string ranges_of(const std::vector<const Record*>& records) {
    double low = no_number, high = no_number;
    for (const Record* r : records) {
        if (!r->usable() || only_bounds(*r) || std::isnan(r->lowest_K())) continue;
        low = std::isnan(low) ? r->lowest_K() : std::min(low, r->lowest_K());
        high = std::isnan(high) ? r->highest_K() : std::max(high, r->highest_K());
    }
    if (std::isnan(low)) return {};
    return low == high ? "only " + celsius_text(low) : celsius_text(low) + " to " + celsius_text(high);
}

std::string cited_range(Question q) {
    if (q.property.phase != Phase::any || q.phase == Phase::any) return ranges_of(speaking_records(q));
    std::string out;
    for (const Phase phase : {Phase::solid, Phase::liquid}) {
        q.phase = phase;
        const std::string range = ranges_of(speaking_records(q));
        if (!range.empty()) out += (out.empty() ? "" : "; ") + range + " (" + name_of(phase) + ")";
    }
    return out;
}

Problem nothing(const Question& q) {
    const std::string what = q.property.id + " of " + q.metal.slug;
    const std::string range = q.property.varies_with_temperature ? cited_range(q) : "";
    if (!range.empty())
        return {Problem::Kind::out_of_range,
                what + " at " + celsius_text(q.temperature_K) + ": outside the cited range, " + range, 0};
    for (const Record* r : speaking_records(q)) {
        if (!r->none.empty()) return {Problem::Kind::no_value, what + ": no value found (" + r->none + ")", 0};
        if (r->usable() && only_bounds(*r))
            return {Problem::Kind::no_value,
                    what + ": only a bound is cited (" + r->points.front().printed + " " + r->unit + ")", 0};
    }
    return {Problem::Kind::no_value, what + ": no value cited", 0};
}

} // namespace

Result<Evaluated> cited_answer(const Question& q) {
    const auto all = candidates(q);
    if (all.empty()) return nothing(q);
    return resolved(all, q);
}

} // namespace pourbook

#include "core/evaluate/evaluate.hpp"

#include "core/evaluate/candidate.hpp"
#include "core/evaluate/money.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string kelvin(double t) {
    return trimmed(t, 6) + " K";
}

/// The uncertainty that the source states, carried from the record's own kind (a conductivity) to the wanted one.
double stated_uncertainty(const Candidate& c) {
    if (!std::isnan(c.record->uncertainty_relative)) return std::abs(c.value_si) * c.record->uncertainty_relative;
    return c.record->uncertainty_si * std::abs(c.value_si / c.recorded_si);
}

bool has_own_range(const Record& r) {
    return r.points.size() == 1 && !std::isnan(r.points.front().low_si) && !std::isnan(r.points.front().high_si);
}

/// Standard uncertainty of one record's answer, before the spread among sources.
double own_uncertainty(const Candidate& c, const Question& q, bool& assumed) {
    double u = stated_uncertainty(c);
    if (std::isnan(u) && has_own_range(*c.record)) {
        const Point& p = c.record->points.front();
        u = std::abs(p.high_si - p.low_si) / 2 / std::sqrt(3.0) / std::abs(p.value_si) * std::abs(c.value_si);
    }
    assumed = std::isnan(u);
    if (assumed) {
        // A melting point answers for solidus and liquidus with its own, smaller default.
        const Property* recorded = q.catalogue.property(c.record->property);
        const Property& p = recorded && recorded->dimension == q.property.dimension ? *recorded : q.property;
        u = std::isnan(p.default_uncertainty_si) ? p.default_uncertainty * std::abs(c.value_si)
                                                 : p.default_uncertainty_si;
        if (c.record->citation.how_known != HowKnown::read) u *= 2;
    }
    const double condition = c.fit == ConditionFit::other ? q.property.condition_spread * std::abs(c.value_si) : 0;
    return std::sqrt(u * u + c.doubt_si * c.doubt_si + condition * condition);
}

SourceValue said_by(const Candidate& c, bool chosen) {
    const Record& r = *c.record;
    return SourceValue{r.citation.source,
                       r.citation.locator,
                       r.citation.through,
                       r.id,
                       r.condition.empty() ? "unstated" : r.condition,
                       c.printed,
                       c.value_si,
                       r.citation.how_known,
                       chosen};
}

/// Other sources' values at the same temperature and a condition that is not known to differ.
void add_spread(Evaluated& e, const std::vector<Candidate>& all) {
    e.spread_low_si = e.spread_high_si = e.value_si;
    for (std::size_t i = 1; i < all.size(); ++i) {
        const Candidate& c = all[i];
        const bool known = std::any_of(e.sources.begin(), e.sources.end(),
                                       [&](const SourceValue& s) { return s.key == c.record->citation.source; });
        const bool comparable =
            c.cover == Cover::direct && (c.fit != ConditionFit::other || all[0].fit == ConditionFit::other);
        if (known || !comparable) continue;
        e.sources.push_back(said_by(c, false));
        e.spread_low_si = std::min(e.spread_low_si, c.value_si);
        e.spread_high_si = std::max(e.spread_high_si, c.value_si);
    }
    const double half = std::max(e.value_si - e.spread_low_si, e.spread_high_si - e.value_si) / 2;
    if (half > e.standard_uncertainty_si) {
        e.standard_uncertainty_si = half;
        e.uncertainty_assumed = false;
        e.trail.push_back("uncertainty widened to cover the spread among sources");
    }
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
    e.standard_uncertainty_si = own_uncertainty(best, q, e.uncertainty_assumed);
    e.sources.push_back(said_by(best, true));
    e.trail.push_back(best.printed + ": " + best.how + " [" + best.record->citation.source + ", " +
                      best.record->citation.locator + "]");
    if (!best.record->why.empty()) e.trail.push_back("preferred: " + best.record->why);
    if (!best.record->note.empty()) e.trail.push_back("note: " + best.record->note);
    if (e.uncertainty_assumed) e.trail.push_back("the source states no uncertainty: assumed by us");
    if (!e.condition_matches)
        e.trail.push_back("only another condition is cited (" + e.condition + "): uncertainty widened");
    add_spread(e, all);
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
    return low == high ? "only " + kelvin(low) : kelvin(low) + " to " + kelvin(high);
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
                what + " at " + kelvin(q.temperature_K) + ": outside the cited range, " + range, 0};
    for (const Record* r : speaking_records(q)) {
        if (!r->none.empty()) return {Problem::Kind::no_value, what + ": no value found (" + r->none + ")", 0};
        if (r->usable() && only_bounds(*r))
            return {Problem::Kind::no_value,
                    what + ": only a bound is cited (" + r->points.front().printed + " " + r->unit + ")", 0};
    }
    return {Problem::Kind::no_value, what + ": no value cited", 0};
}

Result<Evaluated> recorded(const Question& q) {
    const auto all = candidates(q);
    if (all.empty()) return nothing(q);
    return resolved(all, q);
}

Result<Evaluated> without_temperature(const Catalogue& catalogue, const Metal& metal, const char* property) {
    return evaluate(catalogue, metal, property, Conditions{});
}

bool phase_matters(const Property& p) {
    return p.varies_with_temperature && p.phase == Phase::any;
}

Result<Evaluated> reciprocal_of(Result<Evaluated> e) {
    if (!e) return e;
    const double relative = e->standard_uncertainty_si / e->value_si;
    e->value_si = 1 / e->value_si;
    e->standard_uncertainty_si = e->value_si * relative;
    const double low = e->spread_low_si;
    e->spread_low_si = 1 / e->spread_high_si;
    e->spread_high_si = 1 / low;
    for (SourceValue& s : e->sources) s.value_si = 1 / s.value_si;
    for (Cause& c : e->causes) c.relative = -c.relative;
    e->trail.push_back("conductivity = 1 / resistivity");
    return e;
}

Result<Evaluated> text_property(const Metal& metal, const Property& property) {
    const Record* best = nullptr;
    for (const Record& r : metal.records)
        if (r.property == property.id && r.usable() && (!best || r.use == Use::preferred)) best = &r;
    if (!best) return no_value(property.id + " of " + metal.slug + ": no value cited");
    Evaluated e;
    e.text = best->text;
    e.condition = best->condition.empty() ? "unstated" : best->condition;
    e.how_known = best->citation.how_known;
    e.sources.push_back({best->citation.source, best->citation.locator, best->citation.through, best->id, e.condition,
                         best->text, no_number, best->citation.how_known, true});
    return e;
}

/// Matthiessen's rule: the ideal part of the cited curve plus the residual resistivity that the ratio implies.
Result<Evaluated> with_residual(const Catalogue& catalogue, const Metal& metal, Conditions conditions) {
    const double rrr = *conditions.rrr;
    conditions.rrr.reset();
    if (!metal.is_element() || !(rrr > 1))
        return refused("a residual resistivity ratio needs a pure metal and a number above 1");
    if (phase_at(catalogue, metal, conditions.temperature_K) != Phase::solid)
        return refused("a residual resistivity ratio has no meaning in the melt");
    Result<Evaluated> here = evaluate(catalogue, metal, "resistivity", conditions);
    Conditions ice = conditions;
    ice.temperature_K = 273.15;
    const Result<Evaluated> reference = evaluate(catalogue, metal, "resistivity", ice);
    if (!here) return here;
    if (!reference) return reference;
    constexpr double residual_below_K = 25;
    double residual = no_number;
    for (const Record& r : metal.records)
        if (r.property == "resistivity" && r.usable() && r.lowest_K() <= residual_below_K && !r.points.empty())
            residual = std::isnan(residual) ? r.points.front().value_si : std::min(residual, r.points.front().value_si);
    if (std::isnan(residual)) {
        residual = 0;
        here->trail.push_back("no resistivity cited below 25 K: the curve is taken as free of residual resistivity");
    }
    const double added = reference->value_si / rrr - residual;
    here->value_si += added;
    here->trail.push_back("Matthiessen's rule: residual resistivity for RRR " + significant(rrr, 4) +
                          " replaces that of the cited curve");
    return here;
}

} // namespace

std::string resolved_condition(const Metal& metal, const Conditions& conditions) {
    return conditions.condition == "reference" ? metal.reference_condition : conditions.condition;
}

Phase phase_at(const Catalogue& catalogue, const Metal& metal, double temperature_K) {
    const auto solidus = without_temperature(catalogue, metal, "solidus");
    const auto liquidus = without_temperature(catalogue, metal, "liquidus");
    if (solidus && temperature_K <= solidus->value_si + 1e-9) return Phase::solid;
    if (liquidus && temperature_K > liquidus->value_si - 1e-9) return Phase::liquid;
    if (!solidus && !liquidus) return Phase::solid;
    return solidus && liquidus ? Phase::any : (liquidus ? Phase::solid : Phase::any);
}

bool ferromagnetic_at(const Catalogue& catalogue, const Metal& metal, double temperature_K) {
    const auto behaviour = without_temperature(catalogue, metal, "magnetic_behaviour");
    if (!behaviour || behaviour->text != "ferromagnetic") return false;
    const auto curie = without_temperature(catalogue, metal, "curie_temperature");
    return !curie || temperature_K < curie->value_si;
}

Result<Evaluated> evaluate(const Catalogue& catalogue, const Metal& metal, const std::string& id,
                           const Conditions& conditions) {
    const Property* property = catalogue.property(id);
    if (!property) return Problem{Problem::Kind::unknown, "unknown property '" + id + "'", 0};
    if (id == "price") return evaluate_price(catalogue, metal, conditions);
    if (id == "metal_value") return evaluate_metal_value(catalogue, metal);
    if (property->is_text) return text_property(metal, *property);
    if (id == "conductivity") return reciprocal_of(evaluate(catalogue, metal, "resistivity", conditions));
    if (id == "resistivity" && conditions.rrr) return with_residual(catalogue, metal, conditions);

    Question q{catalogue, metal, *property, property->phase, conditions.temperature_K, conditions};
    if (property->phase == Phase::liquid) {
        // A liquid property asked for below the melting range is answered at the liquidus: the melt as it is poured.
        const auto liquidus = without_temperature(catalogue, metal, "liquidus");
        if (liquidus) q.temperature_K = std::max(q.temperature_K, liquidus->value_si);
    }
    if (phase_matters(*property)) {
        q.phase = phase_at(catalogue, metal, conditions.temperature_K);
        if (q.phase == Phase::any)
            return Problem{Problem::Kind::out_of_range,
                           id + " of " + metal.slug + " at " + kelvin(conditions.temperature_K) +
                               ": between solidus and liquidus, no single phase",
                           0};
    }
    return recorded(q);
}

} // namespace pourbook

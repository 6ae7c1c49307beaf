#include "core/evaluate/evaluate.hpp"

#include "core/evaluate/candidate.hpp"
#include "core/evaluate/cited.hpp"
#include "core/evaluate/money.hpp"
#include "core/laws/answer.hpp"
#include "core/laws/casting_value.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>

namespace pourbook {
namespace {

/// The figure that a property without a temperature is cited with, alone: asked for at every evaluation.
std::optional<double> cited_number(const Catalogue& catalogue, const Metal& metal, const char* id) {
    const Property* property = catalogue.property(id);
    if (!property) return std::nullopt;
    const Conditions usual;
    const auto all = candidates({catalogue, metal, *property, property->phase, usual.temperature_K, usual});
    if (all.empty()) return std::nullopt;
    return all.front().value_si;
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

const Record* text_record(const Metal& metal, std::string_view property) {
    const Record* best = nullptr;
    for (const Record& r : metal.records)
        if (r.property == property && r.usable() && (!best || r.use == Use::preferred)) best = &r;
    return best;
}

Result<Evaluated> text_property(const Metal& metal, const Property& property) {
    const Record* best = text_record(metal, property.id);
    if (!best) return no_value(property.id + " of " + metal.slug + ": no value cited");
    Evaluated e;
    e.text = best->text;
    e.condition = best->condition.empty() ? "unstated" : best->condition;
    e.how_known = best->citation.how_known;
    e.sources.push_back({best->citation.source, best->citation.locator, best->citation.through, best->id, e.condition,
                         best->text, no_number, best->citation.how_known, true});
    return e;
}

const std::string& chosen_record(const Evaluated& e) {
    static const std::string none;
    const auto at = std::find_if(e.sources.begin(), e.sources.end(), [](const SourceValue& s) { return s.chosen; });
    return at == e.sources.end() ? none : at->record_id;
}

/// A single printed point used a few kelvin away is moved by the law, which knows the slope; it stays cited. A law that
/// starts from another record than the one that answers has no say.
Evaluated moved(Evaluated cited, const Question& q) {
    const Result<Evaluated> by_law = law_answer(q);
    if (!by_law || by_law->basis != Basis::carried || chosen_record(*by_law) != chosen_record(cited)) return cited;
    Evaluated e = *by_law;
    e.basis = Basis::cited;
    e.away_K = cited.away_K;
    e.sources = std::move(cited.sources);
    e.spread_low_si = std::min(cited.spread_low_si, e.value_si);
    e.spread_high_si = std::max(cited.spread_high_si, e.value_si);
    return e;
}

/// A figure of the asked condition carried from another temperature against one of another condition at this one.
bool surer(const Evaluated& by_law, const Evaluated& other_condition) {
    return by_law.basis == Basis::carried && by_law.condition_matches &&
           by_law.standard_uncertainty_si / std::abs(by_law.value_si) <
               other_condition.standard_uncertainty_si / std::abs(other_condition.value_si);
}

Result<Evaluated> cited_or_by_law(const Question& q) {
    Result<Evaluated> cited = cited_answer(q);
    if (q.conditions.cited_only) return cited;
    if (cited && cited->basis == Basis::cited && cited->away_K > 0 && q.phase == Phase::solid) return moved(*cited, q);
    if (cited && cited->condition_matches) return cited;
    Result<Evaluated> by_law = law_answer(q);
    if (cited) return by_law && surer(*by_law, *cited) ? by_law : cited;
    if (by_law) return by_law;
    Problem why = cited.problem();
    why.text += "; " + by_law.problem().text;
    return why;
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

const char* name_of(Basis basis) {
    return basis == Basis::cited ? "cited" : basis == Basis::carried ? "carried" : "estimated";
}

std::string superconducting_at(const Catalogue& catalogue, const Metal& metal, double temperature_K) {
    constexpr double from_wt_percent = 10; // below it a superconducting element is taken to be harmless
    for (const MagnetFigure& f : catalogue.magnet_figures)
        if (temperature_K < f.value_si && f.quantity == "superconducting_below" &&
            metal.content_percent(f.subject) >= from_wt_percent)
            return f.subject + " superconducts below " + f.printed + " K";
    return {};
}

std::string resolved_condition(const Metal& metal, const Conditions& conditions) {
    return conditions.condition == "reference" ? metal.reference_condition : conditions.condition;
}

Phase phase_at(const Catalogue& catalogue, const Metal& metal, double temperature_K) {
    const auto solidus = cited_number(catalogue, metal, "solidus");
    if (solidus && temperature_K <= *solidus + 1e-9) return Phase::solid;
    const auto liquidus = cited_number(catalogue, metal, "liquidus");
    if (liquidus && temperature_K > *liquidus - 1e-9) return Phase::liquid;
    if (!solidus && !liquidus) return Phase::solid;
    return solidus && liquidus ? Phase::any : (liquidus ? Phase::solid : Phase::any);
}

bool ferromagnetic_at(const Catalogue& catalogue, const Metal& metal, double temperature_K) {
    const Record* behaviour = text_record(metal, "magnetic_behaviour");
    if (!behaviour || behaviour->text != "ferromagnetic") return false;
    const auto curie = cited_number(catalogue, metal, "curie_temperature");
    return !curie || temperature_K < *curie;
}

Result<Evaluated> evaluate(const Catalogue& catalogue, const Metal& metal, const std::string& id,
                           const Conditions& conditions) {
    const Property* property = catalogue.property(id);
    if (!property) return Problem{Problem::Kind::unknown, "unknown property '" + id + "'", 0};
    if (id == "price") return evaluate_price(catalogue, metal, conditions);
    if (id == "metal_value") return evaluate_metal_value(catalogue, metal);
    if (property->is_text) return text_property(metal, *property);
    if (conditions.casting) {
        if (conditions.condition == "reference" && conditions.temper.empty() && !metal.own)
            return casting_value(catalogue, metal, id, conditions);
        Conditions stated = conditions;
        stated.casting.reset();
        return evaluate(catalogue, metal, id, stated);
    }
    if (id == "conductivity") return reciprocal_of(evaluate(catalogue, metal, "resistivity", conditions));
    if (id == "resistivity" && conditions.rrr) return with_residual(catalogue, metal, conditions);

    Question q{catalogue, metal, *property, property->phase, conditions.temperature_K, conditions};
    if (property->phase == Phase::liquid) {
        // A liquid property asked for below the melting range is answered at the liquidus: the melt as it is poured.
        const auto liquidus = cited_number(catalogue, metal, "liquidus");
        if (liquidus) q.temperature_K = std::max(q.temperature_K, *liquidus);
    }
    if (phase_matters(*property)) {
        q.phase = phase_at(catalogue, metal, conditions.temperature_K);
        if (q.phase == Phase::any)
            return Problem{Problem::Kind::out_of_range,
                           id + " of " + metal.slug + " at " + celsius_text(conditions.temperature_K) +
                               ": between solidus and liquidus, no single phase",
                           0};
    }
    return cited_or_by_law(q);
}

} // namespace pourbook

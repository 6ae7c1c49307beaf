#include "core/laws/anchor.hpp"

#include "core/evaluate/cited.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::size_t anchors_tried = 12;

SourceValue as_source(const Citation& c) {
    SourceValue s;
    s.key = c.source;
    s.locator = c.locator;
    s.through = c.through;
    s.how_known = c.how_known;
    s.chosen = true;
    return s;
}

} // namespace

std::optional<Anchor> nearest_anchor(const Question& q) {
    std::vector<double> at = printed_temperatures(q);
    std::sort(at.begin(), at.end(), [&](double a, double b) {
        return std::abs(std::log(a / q.temperature_K)) < std::abs(std::log(b / q.temperature_K));
    });
    std::optional<Anchor> in_another_condition;
    for (std::size_t i = 0; i < std::min(at.size(), anchors_tried); ++i) {
        Question there = q;
        there.temperature_K = at[i];
        Result<Evaluated> e = cited_answer(there);
        if (e && e->condition_matches && e->basis != Basis::carried && e->away_K == 0)
            return Anchor{at[i], std::move(*e)};
        if (e && !in_another_condition) in_another_condition = Anchor{at[i], std::move(*e)};
    }
    return in_another_condition;
}

Evaluated carried_from(const Anchor& anchor, const Question& q, double value_si, double law_relative,
                       const std::string& law) {
    Evaluated e = anchor.value;
    e.value_si = value_si;
    const double relative = std::hypot(anchor.relative(), law_relative);
    e.standard_uncertainty_si = relative * std::abs(value_si);
    e.temperature_K = q.temperature_K;
    e.basis = std::max(anchor.value.basis, Basis::carried);
    e.law = law;
    e.spread_low_si = e.spread_high_si = value_si;
    e.causes = {{q.metal.slug + "." + q.property.id, relative}};
    if (q.conditions.story)
        e.trail.push_back("carried from " + celsius_text(anchor.temperature_K) + " to " +
                          celsius_text(q.temperature_K) + ": " + law);
    return e;
}

Evaluated worked_out(const Question& q, Basis basis, double value_si, double relative, const std::string& law,
                     std::vector<SourceValue> sources) {
    Evaluated e;
    e.value_si = value_si;
    e.standard_uncertainty_si = relative * std::abs(value_si);
    e.temperature_K = q.property.varies_with_temperature ? q.temperature_K : no_number;
    e.condition = q.phase == Phase::liquid ? "liquid" : "unstated";
    e.uncertainty_assumed = true;
    e.how_known = HowKnown::computed;
    e.basis = basis;
    e.law = law;
    for (SourceValue& s : sources) {
        const bool known = std::any_of(e.sources.begin(), e.sources.end(),
                                       [&](const SourceValue& t) { return t.key == s.key && t.locator == s.locator; });
        if (!known) e.sources.push_back(std::move(s));
    }
    if (e.sources.empty()) e.sources.push_back(as_source({"", law, HowKnown::computed, ""}));
    e.spread_low_si = e.spread_high_si = value_si;
    e.causes = {{q.metal.slug + "." + q.property.id, relative}};
    e.trail.push_back(std::string(name_of(basis)) + ": " + law);
    return e;
}

Evaluated estimated_from(const Question& q, const Estimate& estimate, const std::string& law) {
    std::vector<SourceValue> sources;
    for (const Citation& c : estimate.sources) sources.push_back(as_source(c));
    const double relative = estimate.standard_uncertainty_si / std::abs(estimate.value_si);
    Evaluated e = worked_out(q, Basis::estimated, estimate.value_si, relative, law, std::move(sources));
    e.trail.insert(e.trail.end(), estimate.trail.begin(), estimate.trail.end());
    if (!estimate.error.empty()) e.trail.push_back(estimate.error);
    return e;
}

Result<Composition> composition_of_metal(const Catalogue& catalogue, const Metal& metal) {
    std::vector<Share> shares;
    for (const Portion& p : metal.composition)
        if (p.wt_percent > 0) shares.push_back({p.element, p.wt_percent, 0});
    if (shares.empty()) return no_law("the composition of " + metal.slug + " is not known");
    return composition_of(catalogue.alloys, std::move(shares));
}

Treatment treatment_of(const Metal& metal, const Conditions& conditions) {
    const std::string condition = resolved_condition(metal, conditions);
    if (condition == "solution-treated") return Treatment::quenched;
    return treatment_named(condition).value_or(Treatment::annealed);
}

Result<Evaluated> value_at(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                           double temperature_K) {
    Conditions c;
    c.temperature_K = temperature_K;
    return evaluate(catalogue, metal, property, c);
}

Result<double> number_at(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                         double temperature_K) {
    Conditions c;
    c.temperature_K = temperature_K;
    c.story = false;
    const Result<Evaluated> e = evaluate(catalogue, metal, property, c);
    if (!e) return e.problem();
    return e->value_si;
}

Problem no_law(const std::string& why) {
    return {Problem::Kind::no_value, "no law reaches: " + why, 0};
}

} // namespace pourbook

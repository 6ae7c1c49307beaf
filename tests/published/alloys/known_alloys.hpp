// Every alloy of the reference estimated from its composition, beside its cited figure.
// The estimate sees pure metals, published increments and diagrams only, never a figure of an alloy; a point of a
// full-range table within 1 wt% of the alloy is taken out first.
#pragma once

#include "core/alloys/density.hpp"
#include "core/alloys/expansion.hpp"
#include "core/alloys/melting.hpp"
#include "core/alloys/resistivity.hpp"
#include "core/evaluate/evaluate.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace pourbook::testing {

struct KnownAlloy {
    std::string slug, treatment, rule, problem;
    double measured_si = no_number;
    double estimated_si = no_number;
    double half_width_si = 0; // 90 %
    bool remembered = false;  // the cited figure was not read
    std::string same_as;      // near-duplicate earlier in the list: same composition and treatment

    bool supported() const { return problem.empty(); }
    double error_relative() const { return estimated_si / measured_si - 1; }
    double error_K() const { return estimated_si - measured_si; }
    bool inside() const { return std::abs(estimated_si - measured_si) <= half_width_si; }
};

inline Result<Composition> composition_of(const Catalogue& c, const Metal& m) {
    std::vector<Share> shares;
    for (const Portion& p : m.composition)
        if (p.wt_percent > 0) shares.push_back({p.element, p.wt_percent, 0});
    return pourbook::composition_of(c.alloys, shares);
}

/// The treatment a published condition stands for; the metal's own reference condition where none is stated.
inline Treatment treatment_of(const std::string& condition) {
    if (condition == "as-cast") return Treatment::as_cast;
    if (condition == "aged") return Treatment::aged;
    if (condition == "solution-treated") return Treatment::quenched;
    return Treatment::annealed;
}

inline bool same_composition(const Metal& x, const Metal& y) {
    for (const auto* pair : {&x, &y})
        for (const Portion& p : pair->composition)
            if (std::abs(x.content_percent(p.element) - y.content_percent(p.element)) > 0.02) return false;
    return true;
}

/// Conditions in which a resistivity or conductivity of the metal is published.
inline std::vector<std::string> published_conditions(const Metal& m) {
    std::vector<std::string> out;
    for (const Record& r : m.records) {
        if (r.property != "resistivity" && r.property != "conductivity") continue;
        if (!r.usable() || r.phase == Phase::liquid) continue;
        const std::string c = r.condition == "annealed" || r.condition == "as-cast" || r.condition == "aged" ||
                                      r.condition == "solution-treated"
                                  ? r.condition
                                  : "reference";
        if (std::find(out.begin(), out.end(), c) == out.end()) out.push_back(c);
    }
    const bool own = std::find(out.begin(), out.end(), m.reference_condition) != out.end();
    if (own) std::erase(out, "reference");
    return out;
}

template <class Estimator>
KnownAlloy known(const Catalogue& c, const Metal& m, const std::string& property, const std::string& condition,
                 Estimator estimator) {
    KnownAlloy k;
    k.slug = m.slug;
    Conditions conditions;
    conditions.condition = condition;
    conditions.cited_only = true;
    const Result<Evaluated> cited = evaluate(c, m, property, conditions);
    if (!cited) return k;
    k.measured_si = cited->value_si;
    k.remembered = cited->how_known != HowKnown::read;
    const Treatment t = treatment_of(condition == "reference" ? m.reference_condition : condition);
    k.treatment = name_of(t);
    const Result<Composition> composition = composition_of(c, m);
    if (!composition) {
        k.problem = composition.problem().text;
        return k;
    }
    const AlloySetting setting{c, *composition, t, 1.0};
    const auto estimate = estimator(setting);
    if (!estimate) {
        k.problem = estimate.problem().text;
        return k;
    }
    k.estimated_si = estimate->value_si;
    k.half_width_si = (estimate->high90_si - estimate->low90_si) / 2;
    k.rule = estimate->rule;
    return k;
}

inline void mark_duplicates(const Catalogue& c, std::vector<KnownAlloy>& all) {
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = 0; j < i && all[i].same_as.empty(); ++j)
            if (all[i].treatment == all[j].treatment && all[j].same_as.empty() &&
                same_composition(*c.metal(all[i].slug), *c.metal(all[j].slug)))
                all[i].same_as = all[j].slug;
}

inline std::vector<KnownAlloy> known_resistivities(const Catalogue& c) {
    std::vector<KnownAlloy> all;
    for (const Metal& m : c.metals) {
        if (m.is_element()) continue;
        for (const std::string& condition : published_conditions(m))
            all.push_back(known(c, m, "resistivity", condition, [](const AlloySetting& s) -> Result<Estimate> {
                const Result<ResistivityEstimate> r = estimate_resistivity(s);
                if (!r) return r.problem();
                return r->estimate;
            }));
    }
    std::erase_if(all, [](const KnownAlloy& k) { return std::isnan(k.measured_si); });
    mark_duplicates(c, all);
    return all;
}

inline std::vector<KnownAlloy> known_of(const Catalogue& c, const std::string& property) {
    std::vector<KnownAlloy> all;
    for (const Metal& m : c.metals) {
        if (m.is_element()) continue;
        all.push_back(known(c, m, property, "reference", [&](const AlloySetting& s) -> Result<Estimate> {
            if (property == "density") return estimate_density(s);
            const Result<MeltingEstimate> melting = estimate_melting(s);
            if (!melting) return melting.problem();
            return property == "solidus" ? melting->solidus : melting->liquidus;
        }));
    }
    std::erase_if(all, [](const KnownAlloy& k) { return std::isnan(k.measured_si); });
    mark_duplicates(c, all);
    return all;
}

/// The cited coefficient at 20 degC; else the lowest cited mean from 20 degC, brought to 20 degC in the proportion of
/// the host's own mean to its coefficient.
inline Result<Evaluated> cited_expansion(const Catalogue& c, const Metal& m, const std::string& host) {
    Conditions room;
    room.condition = "reference";
    room.cited_only = true;
    if (const auto at = evaluate(c, m, "linear_expansion_at", room)) return at;
    double top = no_number;
    for (const Record& r : m.records)
        if (r.property == "linear_expansion" && r.usable() && !r.points.empty() && !(r.points[0].temperature_K >= top))
            top = r.points[0].temperature_K;
    Conditions hot = room;
    hot.temperature_K = top;
    Result<Evaluated> mean = evaluate(c, m, "linear_expansion", hot);
    const Metal* element = c.element(host);
    if (!mean || !element) return mean;
    const auto host_mean = evaluate(c, *element, "linear_expansion", hot);
    const auto host_at = evaluate(c, *element, "linear_expansion_at", Conditions{});
    if (!host_mean) return host_mean;
    if (!host_at) return host_at;
    mean->value_si *= host_at->value_si / host_mean->value_si;
    return mean;
}

inline std::vector<KnownAlloy> known_expansions(const Catalogue& c) {
    std::vector<KnownAlloy> all;
    for (const Metal& m : c.metals) {
        if (m.is_element()) continue;
        const Result<Composition> composition = composition_of(c, m);
        if (!composition) continue;
        const auto cited = cited_expansion(c, m, composition->host());
        if (!cited) continue;
        KnownAlloy k;
        k.slug = m.slug;
        k.treatment = name_of(treatment_of(m.reference_condition));
        k.measured_si = cited->value_si;
        k.remembered = cited->how_known != HowKnown::read;
        const auto e = estimate_expansion({c, *composition, treatment_of(m.reference_condition)});
        if (!e) {
            k.problem = e.problem().text;
        } else {
            k.estimated_si = e->value_si;
            k.half_width_si = (e->high90_si - e->low90_si) / 2;
            k.rule = e->rule;
        }
        all.push_back(k);
    }
    mark_duplicates(c, all);
    return all;
}

inline double percentile(std::vector<double> numbers, double q) {
    if (numbers.empty()) return no_number;
    std::sort(numbers.begin(), numbers.end());
    const double at = q * static_cast<double>(numbers.size() - 1);
    const std::size_t i = static_cast<std::size_t>(at);
    if (i + 1 >= numbers.size()) return numbers.back();
    return numbers[i] + (at - static_cast<double>(i)) * (numbers[i + 1] - numbers[i]);
}

} // namespace pourbook::testing

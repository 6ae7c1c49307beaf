#include "questions/metals/check.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::array core_properties = {"resistivity", "thermal_conductivity", "density",       "solidus",
                                        "liquidus",    "linear_expansion",     "specific_heat", "latent_heat"};
constexpr double conflict_percent = 3; // relative spread from which sources count as in conflict
constexpr double melting_conflict_percent = 0.5;

bool is_core(const Property& p) {
    return std::find(core_properties.begin(), core_properties.end(), p.id) != core_properties.end();
}

/// The check is of the data, not of what laws make of them.
Conditions cited_alone() {
    Conditions c;
    c.cited_only = true;
    return c;
}

std::size_t values_of(const Record& r) {
    return r.none.empty() ? std::max<std::size_t>(r.points.size(), 1) : 0;
}

void count(CheckResult& result, const Catalogue& catalogue, const Metal& metal) {
    ++(metal.is_element() ? result.elements : result.alloys);
    for (const Record& r : metal.records) {
        ++result.records;
        result.values += values_of(r);
        if (r.citation.how_known == HowKnown::read) result.values_read += values_of(r);
        if (r.citation.how_known == HowKnown::computed) result.values_computed += values_of(r);
        if (!catalogue.reference(r.citation.source) || r.citation.locator.empty()) ++result.without_source;
    }
}

void look_at(CheckResult& result, const Catalogue& catalogue, const Metal& metal, const Property& property) {
    if (property.id == "price" || property.id == "metal_value") return;
    CoverageCell cell{&metal, &property, 0, {}, HowKnown::read};
    for (const Record& r : metal.records)
        if (r.property == property.id) cell.values += values_of(r);
    const Result<Evaluated> e = evaluate(catalogue, metal, property.id, cited_alone());
    if (e) {
        cell.preferred_source = e->sources.front().key;
        cell.how_known = e->how_known;
    }
    result.coverage.push_back(cell);
    if (!e || property.is_text) return;
    if (is_core(property)) {
        ++result.core_answers;
        if (e->how_known == HowKnown::read) ++result.core_answers_read;
    }
    if (property.id == "conductivity") return;
    const double spread = 100 * (e->spread_high_si - e->spread_low_si) / std::abs(e->value_si);
    const bool absolute = !std::isnan(property.default_uncertainty_si);
    if (spread > (absolute ? melting_conflict_percent : conflict_percent))
        result.conflicts.push_back({&metal, &property, *e, spread});
}

double relative(const Evaluated& e) {
    return e.standard_uncertainty_si / std::abs(e.value_si);
}

void check_laws(CheckResult& result, const Catalogue& catalogue, const Metal& metal) {
    const auto at = [&](const char* id) { return evaluate(catalogue, metal, id, cited_alone()); };
    const auto solidus = at("solidus"), liquidus = at("liquidus"), resistivity = at("resistivity"),
               conductivity = at("thermal_conductivity");
    if (solidus && liquidus && solidus->value_si > liquidus->value_si)
        result.faults.push_back(metal.slug + ": solidus " + significant(solidus->value_si, 5) + " K above liquidus " +
                                significant(liquidus->value_si, 5) + " K");
    if (!resistivity || !conductivity || metal.family == "semimetal") return;
    // Wiedemann-Franz: electrons alone give L = 2.44e-8 V2/K2; the lattice adds, mostly in poor conductors.
    // In cast iron graphite carries heat and no current, so the ratio stands higher still.
    const double highest = metal.family == "iron" ? 2e-7 : 8e-8;
    const double lorenz = conductivity->value_si * resistivity->value_si / room_temperature_K;
    const double doubt = 2 * lorenz * std::hypot(relative(*conductivity), relative(*resistivity));
    if (lorenz + doubt < 1.5e-8 || lorenz - doubt > highest)
        result.faults.push_back(metal.slug + ": thermal and electrical conductivity give a Lorenz number of " +
                                significant(lorenz, 3) + " V2/K2, outside 1.5e-8 to " + significant(highest, 1));
}

} // namespace

CheckResult check(const Catalogue& catalogue) {
    CheckResult result;
    result.metals = catalogue.metals.size();
    result.references = catalogue.references.size();
    for (const PriceSet& set : catalogue.price_sets) result.prices += set.prices.size();
    for (const Metal& metal : catalogue.metals) {
        count(result, catalogue, metal);
        for (const Property& property : catalogue.properties) look_at(result, catalogue, metal, property);
        check_laws(result, catalogue, metal);
    }
    std::stable_sort(result.conflicts.begin(), result.conflicts.end(),
                     [](const Conflict& a, const Conflict& b) { return a.spread_percent > b.spread_percent; });
    return result;
}

} // namespace pourbook

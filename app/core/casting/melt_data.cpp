#include "core/casting/melt_data.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace pourbook::casting {
namespace {

constexpr double heat_capacity_doubt = 0.07;
constexpr double latent_heat_doubt = 0.20;
constexpr double melt_density_doubt = 0.03;
constexpr double solidification_doubt = 0.25;
constexpr double share_without_data = 0.05; // carbon, sulphur and phosphorus of a cast iron

using OfElement = std::function<Result<Traced>(const Material&)>;

/// Melts out of a crystal bound otherwise than a metal: dissolved in a metal it melts as that metal does.
bool covalent(const std::string& element) {
    return element == "silicon" || element == "germanium" || element == "carbon" || element == "phosphorus";
}

/// Temperatures at which a property is printed, nearest first, inside [low, high].
std::vector<double> printed_temperatures(const Material& m, const std::string& recorded, double near_K, double low_K,
                                         double high_K) {
    std::vector<double> out;
    const auto take = [&](double t) {
        if (t >= low_K && t <= high_K) out.push_back(t);
    };
    for (const Record& r : m.metal.records) {
        if (r.property != recorded || !r.usable()) continue;
        for (const Point& p : r.points)
            if (!p.is_bound()) take(p.temperature_K);
        if (r.equation) {
            take(r.equation->low_K);
            take(r.equation->high_K);
        }
    }
    std::sort(out.begin(), out.end(), [&](double a, double b) { return std::abs(a - near_K) < std::abs(b - near_K); });
    return out;
}

struct Bounds {
    double low_K, high_K;
};

/// The cited figure at the temperature, or the nearest cited one inside the bounds (flagged).
Result<Traced> cited_or_nearest(const Material& m, const std::string& property, const std::string& recorded,
                                double temperature_K, Bounds bounds) {
    const double inside = std::clamp(temperature_K, bounds.low_K, bounds.high_K);
    Result<Traced> here = cited(m, property, inside);
    if (here) {
        here->estimated = inside != temperature_K;
        return here;
    }
    for (const double t : printed_temperatures(m, recorded, inside, bounds.low_K, bounds.high_K)) {
        Result<Traced> nearest = cited(m, property, t);
        if (!nearest) continue;
        nearest->estimated = true;
        nearest->how += "; last cited figure used for " + trimmed(temperature_K, 5) + " K";
        nearest->standard_uncertainty_si =
            std::hypot(nearest->standard_uncertainty_si, heat_capacity_doubt * std::abs(nearest->value_si));
        return nearest;
    }
    return here;
}

Result<double> liquidus_K(const Material& m) {
    const auto t = liquidus(m);
    if (!t) return t.problem();
    return t->value_si;
}

/// Share-weighted sum over the elements: of the figures, or of their reciprocals (specific volumes).
Result<Traced> mixed(const Material& m, const OfElement& of_element, bool reciprocal, double doubt,
                     const std::string& rule) {
    double sum = 0, share = 0;
    Traced out;
    std::string missing;
    for (const Portion& p : m.metal.composition) {
        if (!(p.wt_percent > 0)) continue;
        const Metal* element = m.catalogue.element(p.element);
        const Result<Traced> part = element ? of_element(Material{m.catalogue, *element, Conditions{}})
                                            : Result<Traced>(Problem{Problem::Kind::no_value, p.element, 0});
        if (!part) {
            missing += (missing.empty() ? "" : ", ") + p.element;
            continue;
        }
        sum += p.wt_percent / 100 * (reciprocal ? 1 / part->value_si : part->value_si);
        share += p.wt_percent / 100;
        add_sources(out, *part);
    }
    if (share < 1 - share_without_data)
        return Problem{
            Problem::Kind::no_value,
            rule + " of " + m.metal.slug + ": nothing cited" + (missing.empty() ? "" : ", nor for its " + missing), 0};
    out.value_si = reciprocal ? share / sum : sum / share;
    out.standard_uncertainty_si = doubt * out.value_si;
    out.estimated = true;
    out.how = rule + ": nothing cited for the alloy, estimated from its elements";
    return out;
}

/// A melt of an alloy is often colder than this element melts: its density goes on along its own slope.
Result<Traced> undercooled(const Material& m, const Result<Traced>& at_melting, double temperature_K, double melts_K) {
    if (!at_melting || temperature_K >= melts_K) return at_melting;
    constexpr double along_K = 100;
    const Result<Traced> hotter = cited(m, "density_liquid", melts_K + along_K);
    if (!hotter) return at_melting;
    Traced out = *at_melting;
    out.value_si += (at_melting->value_si - hotter->value_si) * (melts_K - temperature_K) / along_K;
    out.how += "; carried below its melting point along its slope";
    return out;
}

} // namespace

const Metal* principal_element(const Material& m) {
    if (m.metal.is_element()) return &m.metal;
    const Portion* most = nullptr;
    for (const Portion& p : m.metal.composition)
        if (!most || p.wt_percent > most->wt_percent) most = &p;
    return most ? m.catalogue.element(most->element) : nullptr;
}

Result<Traced> cited(const Material& m, const std::string& property, double temperature_K) {
    Conditions c = m.conditions;
    c.temperature_K = temperature_K;
    c.rrr.reset();
    c.cited_only = true;
    const Result<Evaluated> e = evaluate(m.catalogue, m.metal, property, c);
    if (!e) return e.problem();
    return traced(*e);
}

Result<Traced> solidus(const Material& m) {
    return cited(m, "solidus", room_temperature_K);
}

Result<Traced> liquidus(const Material& m) {
    return cited(m, "liquidus", room_temperature_K);
}

Result<Traced> solid_density(const Material& m) {
    return cited(m, "density", room_temperature_K);
}

Result<Traced> liquid_density(const Material& m, double temperature_K) {
    const auto melts = liquidus_K(m);
    if (!melts) return melts.problem();
    const Result<Traced> own =
        cited_or_nearest(m, "density_liquid", "density", temperature_K, {*melts, std::max(*melts, temperature_K)});
    if (m.metal.is_element()) return undercooled(m, own, temperature_K, *melts);
    const auto of_elements = [&](double at_K) {
        return mixed(
            m, [at_K](const Material& element) { return liquid_density(element, at_K); }, true, melt_density_doubt,
            "density of the melt, additive specific volumes");
    };
    if (!own) return of_elements(temperature_K);
    // Printed for one temperature: from there along the slope of its elements.
    const auto printed = printed_temperatures(m, "density", temperature_K, *melts, std::max(*melts, temperature_K));
    const bool one = !printed.empty() && std::abs(printed.back() - printed.front()) < 1;
    if (!one || std::abs(printed.front() - temperature_K) < 1) return own;
    const Result<Traced> here = of_elements(temperature_K), there = of_elements(printed.front());
    if (!here || !there) return own;
    Traced out = *own;
    out.value_si *= here->value_si / there->value_si;
    out.how += "; carried along the slope of its elements";
    add_sources(out, *here);
    return out;
}

Result<Traced> solid_specific_heat(const Material& m, double temperature_K) {
    const auto melts = solidus(m);
    if (!melts) return melts.problem();
    const Result<Traced> own =
        cited_or_nearest(m, "specific_heat", "specific_heat", temperature_K, {200.0, melts->value_si});
    if (m.metal.is_element() || (own && !own->estimated)) return own;
    const Result<Traced> kopp = mixed(
        m, [temperature_K](const Material& element) { return solid_specific_heat(element, temperature_K); }, false,
        heat_capacity_doubt, "heat capacity, Neumann and Kopp's rule");
    if (!kopp) return own ? own : kopp;
    if (!own) return kopp;
    // The elements give the rise with temperature, the cited figure of the alloy its height.
    const auto anchors = printed_temperatures(m, "specific_heat", temperature_K, 200, melts->value_si);
    const double anchor_K = anchors.empty() ? room_temperature_K : anchors.front();
    const Result<Traced> there = mixed(
        m, [anchor_K](const Material& element) { return solid_specific_heat(element, anchor_K); }, false,
        heat_capacity_doubt, "heat capacity, Neumann and Kopp's rule");
    if (!there) return kopp;
    Traced out = *own;
    out.value_si *= kopp->value_si / there->value_si;
    out.standard_uncertainty_si = heat_capacity_doubt * out.value_si;
    out.how += "; raised with temperature as its elements are";
    add_sources(out, *kopp);
    return out;
}

Result<Traced> liquid_specific_heat(const Material& m, double temperature_K) {
    const auto melts = liquidus_K(m);
    if (!melts) return melts.problem();
    const Result<Traced> own = cited_or_nearest(m, "specific_heat_liquid", "specific_heat", temperature_K,
                                                {*melts, std::max(*melts, temperature_K)});
    if (own || m.metal.is_element()) return own;
    return mixed(
        m, [temperature_K](const Material& element) { return liquid_specific_heat(element, temperature_K); }, false,
        heat_capacity_doubt, "heat capacity of the melt, Neumann and Kopp's rule");
}

Result<Traced> latent_heat(const Material& m) {
    const Result<Traced> own = cited(m, "latent_heat", room_temperature_K);
    if (own || m.metal.is_element()) return own;
    const Metal* host = principal_element(m);
    const auto of_element = [&](const Material& element) {
        const bool other_crystal = host && &element.metal != host && covalent(element.metal.slug);
        return latent_heat(other_crystal ? Material{m.catalogue, *host, Conditions{}} : element);
    };
    return mixed(m, of_element, false, latent_heat_doubt, "heat of fusion, mean of the elements");
}

Result<Traced> solidification_contraction(const Material& m) {
    const Result<Traced> own = cited(m, "solidification_contraction", room_temperature_K);
    if (own) return own;
    const Metal* element = principal_element(m);
    if (!element || element == &m.metal) return own;
    Result<Traced> base =
        cited(Material{m.catalogue, *element, Conditions{}}, "solidification_contraction", room_temperature_K);
    if (!base) return own;
    base->estimated = true;
    base->standard_uncertainty_si =
        std::hypot(base->standard_uncertainty_si, solidification_doubt * std::abs(base->value_si));
    base->how = "solidification contraction: nothing cited for the alloy, that of " + element->name + " stands in";
    return base;
}

} // namespace pourbook::casting

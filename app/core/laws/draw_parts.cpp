#include "core/laws/draw_parts.hpp"

#include "core/laws/anchor.hpp"
#include "core/laws/host.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/uncertainty/draws.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double ice_K = 273.15, least_excess_share = 0.5;

struct RatioRange {
    double low, high;

    double median() const { return std::sqrt(low * high); }
    double log_spread() const { return std::log(high / low) / 2 / normal_90; }
};

RatioRange assumed_ratio(const Metal& metal, const Conditions& conditions) {
    const bool cast = resolved_condition(metal, conditions) == "as-cast";
    return cast ? RatioRange{5, 100} : RatioRange{20, 300};
}

/// Sets value and uncertainty from the parts of the resistivity; spreads are of logarithms.
void set_from_terms(Evaluated& e, bool conductivity) {
    double sum = 0, variance = 0;
    for (const Term& t : e.terms) {
        sum += t.value_si;
        for (const Cause& c : t.causes) variance += std::pow(t.value_si * log_spread(c.relative), 2);
    }
    e.terms_reciprocal = conductivity;
    e.value_si = conductivity ? 1 / sum : sum;
    e.standard_uncertainty_si = e.value_si * std::sqrt(variance) / sum;
}

void add_residual(Evaluated& e, const Catalogue& catalogue, const Metal& metal, const Conditions& conditions,
                  bool conductivity) {
    const Result<double> ice = number_at(catalogue, metal, "resistivity", ice_K);
    if (!ice) return;
    const RatioRange ratio = assumed_ratio(metal, conditions);
    const double ideal = conductivity ? 1 / e.value_si : e.value_si;
    std::vector<Cause> ideal_causes = e.causes;
    for (Cause& c : ideal_causes) c.relative = std::min(std::abs(c.relative), 1.0); // cold, the residual part decides
    e.terms = {{ideal, std::move(ideal_causes)},
               {*ice / ratio.median(), {{metal.slug + ".residual_resistivity", std::expm1(ratio.log_spread())}}}};
    set_from_terms(e, conductivity);
    e.uncertainty_assumed = true;
    if (e.basis == Basis::cited) e.basis = Basis::carried;
    e.law = "cited curve of the pure metal plus a residual part";
    if (conditions.story)
        e.trail.push_back("residual part assumed: nine in ten metals have a resistivity ratio of " +
                          trimmed(ratio.low, 3) + " to " + trimmed(ratio.high, 3) +
                          "; give --purity-rrr if it is known");
}

void split_from_host(Evaluated& e, const Catalogue& catalogue, const Metal& metal, const Conditions& conditions,
                     bool conductivity) {
    const double rho = conductivity ? 1 / e.value_si : e.value_si;
    const double u = rho * e.standard_uncertainty_si / e.value_si;
    const Metal* host = electric_host(catalogue, metal, rho);
    if (!host || host == &metal) return;
    Conditions pure;
    pure.temperature_K = conditions.temperature_K;
    pure.story = false;
    const Result<Evaluated> h = evaluate(catalogue, *host, "resistivity", pure);
    if (!h || phase_at(catalogue, *host, pure.temperature_K) != Phase::solid) return;
    if (h->value_si > rho + 3 * u) return; // a mixture of metals whose best conductor has no part of its own
    const double of_host = h->standard_uncertainty_si;
    const double excess_u = std::sqrt(std::max(u * u - of_host * of_host, u * u / 16));
    const double excess = std::max(rho - h->value_si, least_excess_share * excess_u);
    e.terms = {{h->value_si, h->causes}, {excess, {{metal.slug + ".excess_resistivity", excess_u / excess}}}};
    e.terms_reciprocal = conductivity;
}

} // namespace

void add_draw_parts(Evaluated& e, const Catalogue& catalogue, const Metal& metal, const std::string& property,
                    const Conditions& conditions) {
    const bool conductivity = property == "conductivity";
    if ((property != "resistivity" && !conductivity) || conditions.rrr || !e.terms.empty()) return;
    if (e.condition == "liquid") return;
    if (!metal.is_element())
        split_from_host(e, catalogue, metal, conditions, conductivity);
    else if (conditions.temperature_K < residual_below_K)
        add_residual(e, catalogue, metal, conditions, conductivity);
}

} // namespace pourbook

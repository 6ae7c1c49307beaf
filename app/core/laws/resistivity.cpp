#include "core/laws/resistivity.hpp"

#include "core/alloys/resistivity.hpp"
#include "core/evaluate/cited.hpp"
#include "core/laws/anchor.hpp"
#include "core/laws/debye.hpp"
#include "core/laws/host.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double saturation_si = 1.5e-6, iron_saturation_si = 5e-6, headroom = 1.15, deviation = 0.5;
constexpr double melt_rise_per_K = 2.5e-4, ice_point_K = 273.15;
// Standard errors of the laws: of the logarithm of what Bloch's shape carries, and of the change that Matthiessen's
// rule carries; a floor for both.
constexpr double bloch_error = 0.15, least_bloch_error = 0.012, change_error = 0.30, host_change_error = 0.03,
                 least_error = 0.004, melt_error = 0.06, purest_ratio = 500;

/// Resistivity of an alloy along the temperature, through one figure of it.
class AlloyCurve {
public:
    AlloyCurve(double resistivity_si, double host_si, double saturation)
        : limit_si_(std::max(saturation, headroom * resistivity_si)), ideal_si_(unlimited(resistivity_si)) {
        if (ideal_si_ <= host_si) return;
        double low = 0, high = ideal_si_;
        for (int i = 0; i < 60; ++i) {
            const double x = (low + high) / 2;
            (sum(host_si, x) > ideal_si_ ? high : low) = x;
        }
        excess_si_ = (low + high) / 2;
    }

    /// At the host's resistivity there; `anchor_host_si` at the figure's temperature.
    double at(double host_si, double anchor_host_si) const {
        const double r = excess_si_ > 0 ? sum(host_si, excess_si_) : ideal_si_ * host_si / anchor_host_si;
        return r / (1 + r / limit_si_);
    }

    /// Share of the excess in the sum, at the host's resistivity.
    double excess_share(double host_si) const { return excess_si_ / (host_si + excess_si_); }

private:
    static double sum(double h, double x) { return h + x + deviation * h * x / (h + x); }
    double unlimited(double rho) const { return rho / (1 - rho / limit_si_); }

    double limit_si_, ideal_si_, excess_si_ = 0;
};

double curie_K(const Question& q) {
    const Result<double> t = number_at(q.catalogue, q.metal, "curie_temperature", room_temperature_K);
    return t ? *t : no_number;
}

Result<Evaluated> element_carried(const Question& q, const Anchor& a) {
    if (q.metal.slug == "silicon") return no_law("a semiconductor");
    const double theta = debye_temperature_K(symbol_of(q.metal));
    if (std::isnan(theta)) return no_law("no Debye temperature of " + q.metal.slug + " is known");
    const double curie = curie_K(q), low = std::min(a.temperature_K, q.temperature_K),
                 high = std::max(a.temperature_K, q.temperature_K);
    if (low < curie && curie < high)
        return no_law("the Curie point lies between the cited figures and the temperature");
    const double ratio = bloch_ratio(theta, q.temperature_K, a.temperature_K);
    const double value = a.value.value_si * ratio;
    // Cold, nothing is known of the residual part but that it is seldom above a five-hundredth of the figure at 0 degC.
    const double residual = a.value.value_si * bloch_ratio(theta, ice_point_K, a.temperature_K) / purest_ratio / value;
    const double error = std::hypot(bloch_error * std::log(ratio), least_bloch_error);
    return carried_from(a, q, value, q.temperature_K < a.temperature_K ? std::hypot(error, residual) : error,
                        "Bloch's law of a pure metal, Debye temperature " + trimmed(theta, 4) + " K");
}

struct HostCurve {
    const Metal* host = nullptr;
    double at_anchor = no_number, here = no_number;
    bool without_spins = false;
};

Result<HostCurve> host_between(const Question& q, const Anchor& a) {
    const Metal* host = electric_host(q.catalogue, q.metal, a.value.value_si);
    if (!host) return no_law("no host of known resistivity");
    // What is ferromagnetic where it was measured has the host's whole rise, up to its Curie point and on above it.
    const bool magnetic = ferromagnetic_at(q.catalogue, q.metal, a.temperature_K);
    const Result<double> there = host_resistivity(q.catalogue, *host, magnetic, a.temperature_K);
    const Result<double> here = host_resistivity(q.catalogue, *host, magnetic, q.temperature_K);
    if (!there) return there.problem();
    if (!here) return here.problem();
    return HostCurve{host, *there, *here, without_spins(*host, magnetic)};
}

/// What the rule can't know, relative: how far saturation goes (the plain rule, without it, is as far off on the other
/// side), and what the spins of iron, nickel or cobalt add, which is of the size of the lattice's own change (stainless
/// 316 changes by twice it between 4 and 295 K).
double beyond_rule(const HostCurve& h, double from, double value) {
    constexpr double spins = 0.75;
    const double change = h.here - h.at_anchor, plain = from + change;
    return std::max(std::abs(plain - value) / 2, h.without_spins ? spins * std::abs(change) : 0) / value;
}

Result<Evaluated> alloy_carried(const Question& q, const Anchor& a) {
    const Result<HostCurve> h = host_between(q, a);
    if (!h) return h.problem();
    const double from = a.value.value_si;
    const double limit = symbol_of(*h->host) == "Fe" ? iron_saturation_si : saturation_si;
    const AlloyCurve curve(from, h->at_anchor, limit);
    const double value = curve.at(h->here, h->at_anchor);
    // The host's own change is known well; what deviates is the part that the excess has in it.
    const double of_change = change_error * curve.excess_share(h->at_anchor) + host_change_error;
    const double error = std::hypot(of_change * (value - from) / value, beyond_rule(*h, from, value), least_error);
    // What is uncertain of the excess stays so in ohm m: it weighs more where the metal is cold.
    Anchor scaled = a;
    scaled.value.standard_uncertainty_si *= std::max(1.0, from / value);
    return carried_from(scaled, q, value, error,
                        "Matthiessen's rule from the curve of " + h->host->name + ", with deviation and saturation");
}

Result<Anchor> estimated_anchor(const Question& q) {
    const Result<Composition> composition = composition_of_metal(q.catalogue, q.metal);
    if (!composition) return composition.problem();
    const Result<ResistivityEstimate> e =
        estimate_resistivity({q.catalogue, *composition, treatment_of(q.metal, q.conditions)});
    if (!e) return e.problem();
    Question room = q;
    room.temperature_K = room_temperature_K;
    return Anchor{room_temperature_K, estimated_from(room, e->estimate, e->estimate.rule)};
}

Result<Evaluated> melt_carried(const Question& q, const Anchor& a) {
    const double away = q.temperature_K - a.temperature_K;
    return carried_from(a, q, a.value.value_si * (1 + melt_rise_per_K * away),
                        std::hypot(melt_rise_per_K * away, melt_error), "usual rise of a melt, 2.5e-4 per kelvin");
}

/// Where a cited temperature coefficient stops carrying, the law goes on from there.
std::optional<Anchor> end_of_coefficient(const Question& q, const Anchor& cited) {
    const auto away = [&](double kelvin) { return std::abs(std::log(kelvin / q.temperature_K)); };
    std::optional<Anchor> end;
    for (const double kelvin : coefficient_ends_K(q.metal)) {
        if (away(kelvin) >= away(end ? end->temperature_K : cited.temperature_K)) continue;
        Question there = q;
        there.temperature_K = kelvin;
        if (const Result<Evaluated> e = cited_answer(there); e && e->law == "temperature coefficient")
            end = Anchor{kelvin, *e};
    }
    return end;
}

/// The figure that the curve goes through: cited, else estimated from composition at 20 degC.
Result<Anchor> figure_for(const Question& q) {
    if (const std::optional<Anchor> cited = nearest_anchor(q)) return end_of_coefficient(q, *cited).value_or(*cited);
    if (q.phase == Phase::liquid) return no_law("nothing is cited for the melt");
    if (q.metal.is_element()) return no_law("nothing is cited for the metal");
    return estimated_anchor(q);
}

/// Of a temperature coefficient, relative: standard errors against cited coefficients and the slopes of cited series
/// (88 of elements, 21 of alloys). Where an alloy resists much, the slope may be anything near none, and either sign.
double slope_error(const Metal& metal, double slope_1_K, double resistivity_si) {
    constexpr double pure = 0.20, alloy = 0.25, resistive_1_K = 3e-4, resistive_si = 4e-7;
    if (metal.is_element()) return pure;
    return std::hypot(alloy, resistivity_si > resistive_si ? resistive_1_K / slope_1_K : 0);
}

Result<Evaluated> carried(const Question& q, const Anchor& a) {
    const Basis basis = a.value.basis;
    if (basis == Basis::estimated && std::abs(q.temperature_K - a.temperature_K) < 1e-9) return a.value;
    Result<Evaluated> e = q.phase == Phase::liquid ? Result<Evaluated>(melt_carried(q, a))
                          : q.metal.is_element()   ? element_carried(q, a)
                                                   : alloy_carried(q, a);
    if (e && basis == Basis::estimated) e->basis = basis;
    return e;
}

} // namespace

Result<Evaluated> resistivity_by_law(const Question& q) {
    const Result<Anchor> a = figure_for(q);
    if (!a) return a.problem();
    return carried(q, *a);
}

Result<Evaluated> temperature_coefficient_by_law(const Question& q) {
    constexpr double step_K = 5;
    const Question here{q.catalogue, q.metal,         *q.catalogue.property("resistivity"),
                        q.phase,     q.temperature_K, q.conditions};
    const Result<Anchor> figure = figure_for(here);
    if (!figure) return figure.problem();
    Question cooler = here, warmer = here;
    cooler.temperature_K -= step_K;
    warmer.temperature_K += step_K;
    const Result<Evaluated> below = carried(cooler, *figure), above = carried(warmer, *figure);
    if (!below) return below.problem();
    if (!above) return above.problem();
    const double middle = (below->value_si + above->value_si) / 2;
    const double slope = (above->value_si - below->value_si) / (2 * step_K) / middle;
    return worked_out(q, below->basis, slope, std::hypot(slope_error(q.metal, slope, middle), figure->relative()),
                      "slope of the resistivity's curve: " + below->law, below->sources);
}

} // namespace pourbook

#include "core/laws/specific_heat.hpp"

#include "core/laws/anchor.hpp"
#include "core/laws/by_elements.hpp"
#include "core/laws/debye.hpp"
#include "core/laws/host.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double gas_constant = 8.314462618, rise_per_K = 2.5e-4, most_without_wt = 3, most_without_carried_wt = 5;
constexpr double kopp_error = 0.04, warm_error = 0.05, cold_error = 0.15, cold_K = 150, melt_drift = 0.05,
                 near_heat_error = 0.015;

/// The Debye temperature that fits specific heats: near room temperature an eighth lower than at absolute zero.
double heat_theta_K(const std::string& symbol, double temperature_K) {
    constexpr double lower_by = 0.13, reached_at = 0.15;
    const double theta = debye_temperature_K(symbol), w = std::min(1.0, temperature_K / (reached_at * theta));
    return theta * (1 - lower_by * w * w);
}

/// Debye's curve with the electrons' part, J/(kg K); above 20 degC with the usual rise. NaN: constants not known.
double debye_heat(const Catalogue& catalogue, const std::string& symbol, double temperature_K) {
    const double theta = heat_theta_K(symbol, temperature_K);
    const AtomicMass* mass = catalogue.alloys.mass(symbol);
    if (std::isnan(theta) || !mass) return no_number;
    const double molar =
        3 * gas_constant * debye_share(temperature_K / theta) + electronic_heat(symbol) * temperature_K;
    const double rise = 1 + rise_per_K * std::max(0.0, temperature_K - room_temperature_K);
    return molar * rise / (mass->g_per_mol * 1e-3);
}

double error_at(double temperature_K, double anchor_K) {
    const double far = std::min(1.0, std::abs(std::log(temperature_K / anchor_K)));
    return std::hypot((temperature_K < cold_K ? cold_error : warm_error) * far, near_heat_error);
}

Result<Evaluated> element_heat(const Question& q, const Anchor& a) {
    const std::string& symbol = symbol_of(q.metal);
    const double here = debye_heat(q.catalogue, symbol, q.temperature_K),
                 there = debye_heat(q.catalogue, symbol, a.temperature_K);
    if (std::isnan(here)) return no_law("no Debye temperature of " + q.metal.slug + " is known");
    const double joint = a.value.value_si / there;
    const double scale =
        q.temperature_K < a.temperature_K ? 1 + (joint - 1) * q.temperature_K / a.temperature_K : joint;
    return carried_from(a, q, here * scale, error_at(q.temperature_K, a.temperature_K),
                        "Debye's curve joined to the cited figure");
}

Result<ElementSum> kopp(const Question& q, double temperature_K, double most_without) {
    return sum_over_elements(
        q.catalogue, q.metal,
        [&](const Metal& element) {
            const char* id = q.phase == Phase::liquid ? "specific_heat_liquid" : "specific_heat";
            const auto melts = number_at(q.catalogue, element, "solidus", room_temperature_K);
            const bool stays_solid = q.phase != Phase::liquid && melts;
            return value_at(q.catalogue, element, id, stays_solid ? std::min(temperature_K, *melts) : temperature_K);
        },
        false, most_without);
}

} // namespace

Result<Evaluated> specific_heat_by_law(const Question& q) {
    const std::optional<Anchor> a = nearest_anchor(q);
    if (a && q.phase == Phase::liquid)
        return carried_from(*a, q, a->value.value_si, melt_drift, "the melt's specific heat changes little");
    if (q.metal.is_element()) return a ? element_heat(q, *a) : Result<Evaluated>(no_law("nothing is cited"));
    const double most_without = a ? most_without_carried_wt : most_without_wt;
    const Result<ElementSum> here = kopp(q, q.temperature_K, most_without);
    if (!here) return here.problem();
    if (!a)
        return worked_out(q, Basis::estimated, here->value_si, std::hypot(kopp_error, here->relative),
                          "Neumann and Kopp's rule from its elements", here->sources);
    const Result<ElementSum> there = kopp(q, a->temperature_K, most_without);
    if (!there) return there.problem();
    return carried_from(*a, q, a->value.value_si * here->value_si / there->value_si,
                        std::hypot(error_at(q.temperature_K, a->temperature_K), here->without_data_wt / 100),
                        "risen with temperature as its elements do");
}

} // namespace pourbook

#include "core/laws/thermal.hpp"

#include "core/laws/anchor.hpp"
#include "core/laws/debye.hpp"
#include "core/laws/host.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

constexpr double sommerfeld = 2.443e-8;
constexpr double wiedemann_franz_error = 0.10, melt_heat_error = 0.20, heat_flow_error = 0.12, cold_heat_error = 0.35;
constexpr double lattice_falls_below = 6, lattice_power = 1.5; // of the Debye temperature: theta/6
constexpr double lattice_share_error = 0.5, near_error = 0.02, cold_below_K = 150;

struct ElectronsAndLattice {
    double lorenz, lattice_si;
    const char* whose;
};

ElectronsAndLattice parts_of(const std::string& host) {
    if (host == "Cu") return {2.39e-8, 7.5, "Smith and Palmer"};
    if (host == "Al") return {2.10e-8, 12.6, "Bungardt and Kallenbach"};
    return {sommerfeld, 5, "Sommerfeld's number"};
}

/// Fall of the Lorenz number in an ideal metal, 1 at high temperature.
double lorenz_share(double theta_K, double temperature_K, double ideal_share) {
    // A third of the textbook's 0.63: what aluminium and copper show between 77 and 300 K.
    constexpr double forms = 0.19, pi2 = std::numbers::pi * std::numbers::pi;
    const double x = theta_K / temperature_K;
    const double added = 3 / pi2 * forms * x * x - 0.3 * bloch_integral(7, x) / (2 * pi2 * bloch_integral(5, x));
    return 1 / (1 + ideal_share * std::max(added, 0.0));
}

struct HeatParts {
    double electrons = 0, lattice = 0;
    Evaluated resistivity;

    double sum() const { return electrons + lattice; }
};

/// Both parts at a temperature, by the constants alone.
Result<HeatParts> parts_at(const Question& q, double temperature_K) {
    Conditions c = q.conditions;
    c.temperature_K = temperature_K;
    if (q.phase == Phase::solid) // tables of the solid end a little above it
        if (const auto solidus = number_at(q.catalogue, q.metal, "solidus", room_temperature_K))
            c.temperature_K = std::min(temperature_K, *solidus);
    Result<Evaluated> rho = evaluate(q.catalogue, q.metal, "resistivity", c);
    if (!rho) return rho.problem();
    const Metal* host = main_element(q.catalogue, q.metal);
    const std::string symbol = host ? symbol_of(*host) : std::string();
    const ElectronsAndLattice l = parts_of(symbol);
    const double theta = debye_temperature_K(symbol);
    HeatParts out;
    if (q.phase == Phase::liquid || std::isnan(theta)) {
        out.electrons = sommerfeld * temperature_K / rho->value_si;
    } else {
        const double ideal_share = [&] {
            if (q.metal.is_element()) return 1.0;
            const Result<double> h = host_resistivity(q.catalogue, *host, false, temperature_K);
            return h ? std::clamp(*h / rho->value_si, 0.0, 1.0) : 0.0;
        }();
        // Sommerfeld's number holds at low temperature for what is scattered by solutes; the fall is for phonons.
        const double here = lorenz_share(theta, temperature_K, ideal_share),
                     room = lorenz_share(theta, room_temperature_K, ideal_share);
        out.electrons = l.lorenz * std::min(here / room, sommerfeld / l.lorenz * 1.05) * temperature_K / rho->value_si;
        const double shape = std::pow(std::min(1.0, temperature_K / (theta / lattice_falls_below)), lattice_power);
        out.lattice = q.metal.is_element() ? 0 : l.lattice_si * shape;
    }
    out.resistivity = std::move(*rho);
    return out;
}

} // namespace

Result<Evaluated> thermal_conductivity_by_law(const Question& q) {
    constexpr std::array not_metals = {"silicon", "bismuth", "antimony"};
    if (std::find(not_metals.begin(), not_metals.end(), q.metal.slug) != not_metals.end() && q.phase != Phase::liquid)
        return no_law("Wiedemann and Franz's law does not hold for " + q.metal.slug);
    const Result<HeatParts> here = parts_at(q, q.temperature_K);
    if (!here) return here.problem();
    const double of_rho = here->resistivity.standard_uncertainty_si / here->resistivity.value_si;
    const double of_lattice = lattice_share_error * here->lattice / here->sum();
    if (const std::optional<Anchor> a = nearest_anchor(q)) {
        const Result<HeatParts> there = parts_at(q, a->temperature_K);
        if (!there) return there.problem();
        const double far = std::log(q.temperature_K / a->temperature_K);
        const double cold =
            std::min(q.temperature_K, a->temperature_K) < cold_below_K ? cold_heat_error : heat_flow_error;
        const double error = std::hypot(cold * std::min(std::abs(far), 1.5) + near_error, of_lattice * far / 2);
        return carried_from(*a, q, a->value.value_si * here->sum() / there->sum(), error,
                            "Wiedemann and Franz's law with the resistivity's curve");
    }
    const bool estimated = here->resistivity.basis == Basis::estimated;
    return worked_out(
        q, estimated ? Basis::estimated : Basis::carried, here->sum(),
        std::hypot(q.phase == Phase::liquid ? melt_heat_error : wiedemann_franz_error, of_rho, of_lattice),
        "Wiedemann and Franz's law from the resistivity, lattice part " + trimmed(here->lattice, 3) + " W/(m K)",
        here->resistivity.sources);
}

} // namespace pourbook

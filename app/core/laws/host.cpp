#include "core/laws/host.hpp"

#include "core/laws/anchor.hpp"
#include "core/laws/debye.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr double least_host_at_percent = 5;

/// Slopes above the Curie points (iron 1200 to 1500 K, nickel 700 to 900 K, cobalt by analogy; handbook tables in
/// the reference).
struct LatticeSlope {
    const char* symbol;
    double ohm_m_per_K;
};
constexpr std::array lattice_slopes = {LatticeSlope{"Fe", 3.5e-10}, LatticeSlope{"Ni", 3.2e-10},
                                       LatticeSlope{"Co", 3.5e-10}};

const LatticeSlope* lattice_slope(const std::string& symbol) {
    for (const LatticeSlope& s : lattice_slopes)
        if (symbol == s.symbol) return &s;
    return nullptr;
}

double room_resistivity(const Catalogue& catalogue, const Metal& element) {
    const Result<double> rho = number_at(catalogue, element, "resistivity", room_temperature_K);
    return rho ? *rho : no_number;
}

Result<double> by_lattice_alone(const LatticeSlope& slope, const std::string& symbol, double temperature_K) {
    return slope.ohm_m_per_K * room_temperature_K *
           bloch_ratio(debye_temperature_K(symbol), temperature_K, room_temperature_K);
}

} // namespace

const std::string& symbol_of(const Metal& element) {
    static const std::string none;
    return element.composition.empty() ? none : element.composition.front().element;
}

const Metal* main_element(const Catalogue& catalogue, const Metal& metal) {
    if (metal.is_element()) return &metal;
    const Result<Composition> c = composition_of_metal(catalogue, metal);
    return c ? catalogue.element(c->host()) : nullptr;
}

const Metal* electric_host(const Catalogue& catalogue, const Metal& metal, double resistivity_si) {
    if (metal.is_element()) return &metal;
    const Result<Composition> c = composition_of_metal(catalogue, metal);
    if (!c) return nullptr;
    const Metal* main = catalogue.element(c->host());
    if (main && room_resistivity(catalogue, *main) < resistivity_si) return main;
    const Metal* best = nullptr;
    double least = resistivity_si;
    for (const Share& s : c->shares()) {
        const Metal* element = s.at_percent >= least_host_at_percent ? catalogue.element(s.element) : nullptr;
        const double rho = element ? room_resistivity(catalogue, *element) : no_number;
        if (!(rho < least)) continue;
        best = element;
        least = rho;
    }
    return best ? best : main;
}

bool without_spins(const Metal& host, bool ferromagnetic_alloy) {
    return !ferromagnetic_alloy && lattice_slope(symbol_of(host));
}

Result<double> host_resistivity(const Catalogue& catalogue, const Metal& host, bool ferromagnetic_alloy,
                                double temperature_K) {
    const std::string& symbol = symbol_of(host);
    if (without_spins(host, ferromagnetic_alloy))
        return by_lattice_alone(*lattice_slope(symbol), symbol, temperature_K);
    const Result<double> melts_K = number_at(catalogue, host, "solidus", room_temperature_K);
    const bool solid = !melts_K || !(temperature_K > *melts_K);
    const Result<double> own = number_at(catalogue, host, "resistivity", solid ? temperature_K : *melts_K);
    if (!own || solid) return own;
    return *own * bloch_ratio(debye_temperature_K(symbol), temperature_K, *melts_K);
}

} // namespace pourbook

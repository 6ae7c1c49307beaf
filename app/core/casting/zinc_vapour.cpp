#include "core/casting/zinc_vapour.hpp"

#include <cmath>

namespace pourbook::casting {
namespace {

constexpr double zinc_g_mol = 65.38, copper_g_mol = 63.546;
constexpr double gas_constant_J_mol_K = 8.314462618; // exact in the SI of 2019
constexpr double mixing_J_mol = -22000;
constexpr double torr_Pa = atmosphere_Pa / 760;

} // namespace

double zinc_mole_fraction(double w) {
    return w / zinc_g_mol / (w / zinc_g_mol + (1 - w) / copper_g_mol);
}

double zinc_pressure_Pa(double x, double kelvin) {
    const double pure = torr_Pa * std::pow(10.0, -6620 / kelvin - 1.255 * std::log10(kelvin) + 12.34);
    return x * std::exp(mixing_J_mol * (1 - x) * (1 - x) / (gas_constant_J_mol_K * kelvin)) * pure;
}

double zinc_pressure_reached_K(double x, double pascal) {
    double low = 300, high = 4000; // the pressure rises with temperature
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (zinc_pressure_Pa(x, middle) < pascal ? low : high) = middle;
    }
    return high;
}

} // namespace pourbook::casting

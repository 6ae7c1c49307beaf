#include "core/laws/debye.hpp"

#include <array>
#include <cmath>
#include <functional>
#include <limits>

namespace pourbook {
namespace {

struct ElementConstants {
    const char* symbol;
    double debye_K, electronic_mJ;
};

constexpr std::array element_constants = {
    ElementConstants{"Li", 344, 1.63}, ElementConstants{"Be", 1440, 0.17}, ElementConstants{"Na", 158, 1.38},
    ElementConstants{"Mg", 400, 1.3},  ElementConstants{"Al", 428, 1.35},  ElementConstants{"Si", 645, 0},
    ElementConstants{"Ca", 230, 2.9},  ElementConstants{"Ti", 420, 3.35},  ElementConstants{"V", 380, 9.26},
    ElementConstants{"Cr", 630, 1.40}, ElementConstants{"Mn", 410, 9.20},  ElementConstants{"Fe", 470, 4.98},
    ElementConstants{"Co", 445, 4.73}, ElementConstants{"Ni", 450, 7.02},  ElementConstants{"Cu", 343, 0.695},
    ElementConstants{"Zn", 327, 0.64}, ElementConstants{"Ga", 320, 0.596}, ElementConstants{"Zr", 291, 2.80},
    ElementConstants{"Nb", 275, 7.79}, ElementConstants{"Mo", 450, 2.0},   ElementConstants{"Rh", 480, 4.9},
    ElementConstants{"Pd", 274, 9.42}, ElementConstants{"Ag", 225, 0.646}, ElementConstants{"Cd", 209, 0.688},
    ElementConstants{"In", 108, 1.69}, ElementConstants{"Sn", 200, 1.78},  ElementConstants{"Sb", 211, 0.11},
    ElementConstants{"Ta", 240, 5.9},  ElementConstants{"W", 400, 1.3},    ElementConstants{"Ir", 420, 3.1},
    ElementConstants{"Pt", 240, 6.8},  ElementConstants{"Au", 165, 0.729}, ElementConstants{"Hg", 71.9, 1.79},
    ElementConstants{"Pb", 105, 2.98}, ElementConstants{"Bi", 119, 0.008}};

const ElementConstants* constants_of(const std::string& symbol) {
    for (const ElementConstants& e : element_constants)
        if (symbol == e.symbol) return &e;
    return nullptr;
}

/// Simpson's rule from near 0; both integrands vanish there. Beyond x = 60 nothing is left.
template <class F> double integral_to(double top, F f) {
    constexpr int steps = 120;
    const double end = std::min(top, 60.0), h = end / steps;
    double sum = f(end);
    for (int i = 1; i < steps; ++i) sum += f(i * h) * (i % 2 ? 4 : 2);
    return sum * h / 3;
}

} // namespace

double debye_temperature_K(const std::string& symbol) {
    const ElementConstants* e = constants_of(symbol);
    return e ? e->debye_K : std::numeric_limits<double>::quiet_NaN();
}

double electronic_heat(const std::string& symbol) {
    const ElementConstants* e = constants_of(symbol);
    return e ? e->electronic_mJ * 1e-3 : 0;
}

double bloch_integral(int n, double theta_over_t) {
    // The few hosts and the temperatures of their figures are asked for again and again, by every alloy of a ranking.
    struct Known {
        int n = 0;
        double theta_over_t = 0, integral = 0;
    };
    thread_local std::array<Known, 256> known;
    Known& k = known[std::hash<double>()(theta_over_t) % known.size()];
    if (k.n == n && k.theta_over_t == theta_over_t) return k.integral;
    k = {n, theta_over_t, integral_to(theta_over_t, [n](double x) {
             const double e = std::expm1(x); // (e^x - 1)(1 - e^-x) = e^2 / (1 + e)
             double power = 1;
             for (int i = 0; i < n; ++i) power *= x;
             return power * (1 + e) / (e * e);
         })};
    return k.integral;
}

double debye_share(double t_over_theta) {
    return 3 * std::pow(t_over_theta, 3) * bloch_integral(4, 1 / t_over_theta);
}

double bloch_ratio(double theta_K, double temperature_K, double reference_K) {
    const double here = std::pow(temperature_K, 5) * bloch_integral(5, theta_K / temperature_K);
    return here / (std::pow(reference_K, 5) * bloch_integral(5, theta_K / reference_K));
}

} // namespace pourbook

#include "core/eddy/thin_wall.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/quadrature.hpp"

#include <cmath>
#include <numbers>
#include <vector>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;
constexpr double whole = 45 * pi * pi / 512; // int x^4 K1(x)^2 dx
constexpr double far = 60;                   // in x; the integrands fall as exp(-2x (1 - d/a))

template <class F> double summed(F integrand) {
    double sum = integral<16>(integrand, 0, 0.5);
    for (double low = 0.5; low < far; low *= 1.5) sum += integral<16>(integrand, low, low * 1.5);
    return sum;
}

/// exp(-y) I_m(y) for m = 0..last, by backward recurrence.
std::vector<double> scaled_i(double y, int last) {
    std::vector<double> value(static_cast<std::size_t>(last) + 1);
    double above = 0, here = 1e-250;
    for (int m = last + 30 + static_cast<int>(y); m > 0; --m) {
        if (m <= last) value[static_cast<std::size_t>(m)] = here;
        const double below = above + 2 * m / y * here;
        above = here;
        here = below;
        if (here > 1e200) { // keep clear of overflow
            here *= 1e-200;
            above *= 1e-200;
            for (double& v : value) v *= 1e-200;
        }
    }
    const double norm = scaled_bessel(y).i0 / here;
    value[0] = here;
    for (double& v : value) v *= norm;
    return value;
}

/// exp(x) K_m'(x) for m = 0..last, by forward recurrence.
std::vector<double> scaled_k_slope(double x, int last) {
    const RealScaledBessel b = scaled_bessel(x);
    std::vector<double> k = {b.k0, b.k1};
    for (int m = 1; m <= last; ++m)
        k.push_back(k[static_cast<std::size_t>(m) - 1] + 2 * m / x * k[static_cast<std::size_t>(m)]);
    std::vector<double> slope = {-b.k1};
    for (std::size_t m = 1; m <= static_cast<std::size_t>(last); ++m) slope.push_back(-(k[m - 1] + k[m + 1]) / 2);
    return slope;
}

} // namespace

double slit_drag(int slits) {
    if (slits < 1) return 1;
    return summed([slits](double x) {
               const double k1 = scaled_bessel(x).k1, t = pi * x / slits;
               return std::pow(x, 4) * k1 * k1 * std::exp(-2 * x) * (1 - std::tanh(t) / t);
           }) /
           whole;
}

Result<double> off_axis_drag(double offset) {
    if (!(offset >= 0 && offset <= 0.6))
        return Problem{Problem::Kind::refused, "off-axis drag is known for offsets from 0 to 0.6 of the bore radius",
                       0};
    if (offset < 1e-6) return 1.0;
    constexpr int last = 60; // terms fall as offset^(2m)
    const double sum = summed([offset](double x) {
        const auto i = scaled_i(x * offset, last), k = scaled_k_slope(x, last);
        double total = 0;
        for (std::size_t m = 0; m <= last; ++m) {
            const double product = i[m] * k[m], order = static_cast<double>(m);
            if (!std::isfinite(product)) break; // I underflows where K overflows, far beyond the terms that count
            total += (m == 0 ? 1 : 2) * product * product * x * x / (x * x + order * order);
        }
        return std::pow(x, 4) * total * std::exp(-2 * x * (1 - offset));
    });
    return sum / whole;
}

} // namespace pourbook::eddy

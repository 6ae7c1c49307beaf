#include "core/eddy/turned_ball.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::eddy {
namespace {

/// I1 and K1 of x r and their slopes, kept within range by exp(-x (B - r)) and exp(x (r - 1)).
struct Radial {
    double i, di, k, dk;
};

Radial radial(double x, double r, double outside) {
    const double y = x * r, grown = std::exp(-x * (outside - r)), faded = std::exp(-x * (r - 1));
    const RealScaledBessel b = scaled_bessel(y);
    return {grown * b.i1, grown * (b.i0 - b.i1 / y), faded * b.k1, -faded * (b.k0 + b.k1 / y)};
}

/// int r (|E_r|^2 + |E_t|^2 + |E_z|^2) dr over the wall from 1 to B, times exp(2x).
double power(double x, double outside) {
    const Radial in = radial(x, 1, outside), out = radial(x, outside, outside);
    // alpha di + beta dk = k / r at both faces.
    const double determinant = in.di * out.dk - in.dk * out.di, at_in = in.k, at_out = out.k / outside;
    const double alpha = (at_in * out.dk - in.dk * at_out) / determinant,
                 beta = (in.di * at_out - at_in * out.di) / determinant;
    const auto density = [&](double s) {
        const double r = std::exp(s);
        const Radial b = radial(x, r, outside);
        const double f = alpha * b.i + beta * b.k, slope = alpha * b.di + beta * b.dk;
        const double radially = x * (b.k / r - slope), around = x * x * b.dk - f / r, along = x * f;
        return r * r * (radially * radially + around * around + along * along);
    };
    const double end = std::log(outside);
    const int panels = std::max(1, static_cast<int>(std::ceil(end)));
    double sum = 0;
    for (int i = 0; i < panels; ++i) sum += integral<10>(density, end * i / panels, end * (i + 1) / panels);
    return sum;
}

} // namespace

double across_over_along(const Bore& bore) {
    const double outside = bore.outer_radius_m / bore.inner_radius_m;
    double sum = 0;
    for (double low = 0; low < 20; low += 1)
        sum += integral<10>([&](double x) { return power(x, outside) * std::exp(-2 * x); }, low, low + 1);
    // Along: mu0^2 m^2 sigma (15/1024) (1 - 1/B^3) / a^3; across: mu0^2 m^2 sigma / (4 pi^2 a^3) times the sum.
    const double along = 15.0 / 1024 * (1 - std::pow(outside, -3));
    return sum / (4 * std::numbers::pi * std::numbers::pi) / along;
}

} // namespace pourbook::eddy

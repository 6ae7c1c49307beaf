#include "core/eddy/bessel.hpp"

#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr double tiny = 1e-17;

// The same three methods serve real and complex arguments; T is double or Complex.
template <class T> struct Values { T i0, i1, k0, k1; };

double size(double x) {
    return std::abs(x);
}
double size(const Complex& z) { // within a factor of root two of |z|, which is enough to end a series
    return std::max(std::abs(z.real()), std::abs(z.imag()));
}

template <class T> Values<T> by_power_series(T z) {
    const T t = z * z * 0.25;
    T term = 1.0, i0 = 1.0, over = 1.0, i1 = 1.0, harmonic_sum = 0.0; // term = t^k / k!^2, over = t^k / (k! (k+1)!)
    double harmonic = 0;
    for (int k = 1; k < 40 && size(term) > tiny; ++k) {
        term *= t / double(k) / double(k);
        over *= t / double(k) / double(k + 1);
        harmonic += 1.0 / k;
        i0 += term;
        i1 += over;
        harmonic_sum += harmonic * term;
    }
    i1 *= 0.5 * z;
    const T k0 = -(std::log(0.5 * z) + std::numbers::egamma) * i0 + harmonic_sum;
    const T k1 = (1.0 / z - i1 * k0) / i0;
    const T down = std::exp(-z), up = 1.0 / down;
    return {i0 * down, i1 * down, k0 * up, k1 * up};
}

/// K1/K0 by Steed's evaluation of the continued fraction of the confluent hypergeometric function.
template <class T> T ratio_of_k(T z) {
    T b = 2.0 * (1.0 + z), d = 1.0 / b, step = d, h = d;
    double a = -0.25;
    for (int i = 2; i < 500; ++i) {
        a -= 2 * (i - 1);
        b += 2.0;
        d = 1.0 / (b + a * d);
        step *= b * d - 1.0;
        h += step;
        if (size(step) < tiny * size(h)) break;
    }
    return (z + 0.5 - 0.25 * h) / z;
}

template <class T> Values<T> by_recurrence(T z) {
    const int start = 20 + static_cast<int>(1.6 * std::abs(z));
    const T two_over_z = 2.0 / z;
    T above = 0.0, here = 1e-60, sum = 0.0; // proportional to I(n+1), I(n)
    for (int n = start; n > 0; --n) {
        sum += here;
        const T below = above + double(n) * two_over_z * here;
        above = here;
        here = below;
    }
    const T norm = here + 2.0 * sum; // of exp(-z) times the wanted ones
    const T i0 = here / norm, i1 = above / norm;
    const T ratio = ratio_of_k(z);
    const T k0 = 1.0 / (z * (i0 * ratio + i1));
    return {i0, i1, k0, k0 * ratio};
}

/// Even and odd parts of Hankel's sum of a_k(nu)/z^k.
template <class T> void hankel_sums(T one_over_8z, double four_nu2, T& even, T& odd) {
    T term = 1.0;
    even = 1.0;
    odd = 0.0;
    for (int k = 1; k < 60; ++k) {
        const double m = 2 * k - 1;
        term *= (four_nu2 - m * m) / k * one_over_8z;
        (k % 2 ? odd : even) += term;
        if (size(term) < tiny) break;
    }
}

/// What the growing exponential leaves of the falling one in I, relative to exp(z): it counts near the imaginary axis
/// only.
double falling_part(double) {
    return 0;
}
Complex falling_part(const Complex& z) {
    if (z.real() > 20) return 0;
    return Complex(0, z.imag() >= 0 ? 1 : -1) * std::exp(-2.0 * z);
}

template <class T> Values<T> by_expansion(T z) {
    const T one_over_8z = 0.125 / z;
    T even0, odd0, even1, odd1;
    hankel_sums(one_over_8z, 0, even0, odd0);
    hankel_sums(one_over_8z, 4, even1, odd1);
    const T root = std::sqrt(z), grows = 1.0 / (std::sqrt(2 * std::numbers::pi) * root),
            falls = std::sqrt(std::numbers::pi / 2) / root;
    const T rest = falling_part(z);
    return {grows * (even0 - odd0 + rest * (even0 + odd0)), grows * (even1 - odd1 - rest * (even1 + odd1)),
            falls * (even0 + odd0), falls * (even1 + odd1)};
}

template <class T> Values<T> evaluated(T z) {
    const double modulus = std::abs(z);
    if (modulus <= 2) return by_power_series(z);
    if (modulus < 20) return by_recurrence(z);
    return by_expansion(z);
}

} // namespace

ScaledBessel scaled_bessel(Complex z) {
    const Values<Complex> v = evaluated(z);
    return {v.i0, v.i1, v.k0, v.k1};
}

RealScaledBessel scaled_bessel(double x) {
    const Values<double> v = evaluated(x);
    return {v.i0, v.i1, v.k0, v.k1};
}

double bessel_j1(double x) {
    const double size = std::abs(x);
    const int points = 12 + static_cast<int>(size / 2 + 3 * std::cbrt(size)); // of a quarter turn
    double sum = 0;
    for (int i = 0; i < points; ++i) {
        const double sine = std::sin(std::numbers::pi * (i + 0.5) / (2 * points));
        sum += std::sin(x * sine) * sine;
    }
    return sum / points;
}

} // namespace pourbook::eddy

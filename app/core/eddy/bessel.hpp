// Modified Bessel functions of order 0 and 1 for complex argument, exponentially scaled.
//
// Range: Re z >= 0, z not 0. Relative error below 1e-12 for 1e-8 <= |z| <= 1e4, measured against 30-digit arithmetic
// (tests/unit/eddy/bessel_table.hpp, made by tests/eddy/make_bessel_table.py).
// Method: |z| <= 2 power series (DLMF 10.25.2, 10.31.2); |z| < 20 backward recurrence for I, normalised by
// exp(z) = I0 + 2 (I1 + I2 + ...) (DLMF 10.35.5), and Steed's continued fraction for K1/K0 with the Wronskian
// I0 K1 + I1 K0 = 1/z (DLMF 10.28.2); |z| >= 20 Hankel's expansions (DLMF 10.40.2, 10.40.5).
// DLMF: NIST Digital Library of Mathematical Functions, chapter 10.
#pragma once

#include <complex>

namespace pourbook::eddy {

using Complex = std::complex<double>;

struct ScaledBessel {
    Complex i0, i1; // exp(-z) I0(z), exp(-z) I1(z)
    Complex k0, k1; // exp(+z) K0(z), exp(+z) K1(z)
};

ScaledBessel scaled_bessel(Complex z);

struct RealScaledBessel {
    double i0, i1, k0, k1;
};

/// The same on the real axis, x > 0.
RealScaledBessel scaled_bessel(double x);

/// J1(x) for real x, by the trapezoidal rule on Bessel's integral (DLMF 10.9.1), which converges geometrically for a
/// periodic integrand. Error below 1e-14 of its largest value for |x| <= 2000; the cost grows with |x|.
double bessel_j1(double x);

} // namespace pourbook::eddy

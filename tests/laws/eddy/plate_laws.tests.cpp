// Slit tube, off-axis travel and plate: limits and independent calculations.
#include "core/eddy/magnet.hpp"
#include "core/eddy/plate.hpp"
#include "core/eddy/thin_wall.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;

TEST_CASE("drag of slit tubes", "[eddy][law]") {
    // Independent calculation of the same integral (three figures); one slit by finite differences on the unrolled
    // wall: 0.767.
    const double table[][2] = {{1, 0.768}, {2, 0.583}, {3, 0.447}, {4, 0.348}, {6, 0.223}, {8, 0.151}, {12, 0.081}};
    for (const auto& [slits, share] : table) CHECK(slit_drag(static_cast<int>(slits)) == Approx(share).margin(6e-4));
    CHECK(slit_drag(1000) < 1e-4); // limit: no closed path is left
}

TEST_CASE("drag off the axis", "[eddy][law]") {
    // Independent calculation; finite differences: 1.052, 1.227, 1.598 at 0.1, 0.2, 0.3.
    const double table[][2] = {{0.05, 1.013}, {0.1, 1.052}, {0.15, 1.122}, {0.2, 1.228},
                               {0.3, 1.598},  {0.4, 2.35},  {0.5, 4.01}};
    for (const auto& [offset, factor] : table) {
        const auto got = off_axis_drag(offset);
        REQUIRE(got);
        CHECK(*got == Approx(factor).epsilon(2e-3));
    }
    CHECK(*off_axis_drag(0) == Approx(1));
    CHECK_FALSE(off_axis_drag(0.9));
}

TEST_CASE("plate: thin, thick, slow and fast", "[eddy][law]") {
    const double mu0 = vacuum_permeability, pi = std::numbers::pi, h = 0.02, sigma = 5.8e7, w = 2e-6;
    const Plate thin{sigma, w};
    SECTION("slow over a thin sheet") {
        // Limit: 3 mu0^2 m^2 sigma w v/(128 pi h^4) for a normal moment, three quarters of it along the motion.
        const double law = 3 * mu0 * mu0 * sigma * w * 0.01 / (128 * pi * std::pow(h, 4));
        CHECK(plate_force(thin, 1, MomentAxis::normal, h, 0.01)->drag_N == Approx(law).epsilon(1e-3));
        CHECK(plate_force(thin, 1, MomentAxis::along_motion, h, 0.01)->drag_N == Approx(0.75 * law).epsilon(1e-3));
    }
    SECTION("Reitz's formula at any speed over a thin sheet") {
        // Reitz 1970 (from memory): drag = (3 mu0 m^2/(32 pi h^4)) (u0/v) [1 - 1/sqrt(1 + v^2/u0^2)], u0 = 2/(mu0 sigma
        // w).
        const double u0 = 2 / (mu0 * sigma * w), unit = 3 * mu0 / (32 * pi * std::pow(h, 4));
        for (const double times : {0.1, 0.5, 1.272, 3.0, 10.0}) {
            const PlateForce f = *plate_force(thin, 1, MomentAxis::normal, h, times * u0);
            CHECK(f.drag_N == Approx(unit / times * (1 - 1 / std::sqrt(1 + times * times))).epsilon(2e-3));
            CHECK(f.drag_N / f.lift_N == Approx(1 / times).epsilon(2e-3)); // drag over lift is u0/v
        }
    }
    SECTION("fast: the image of a perfect conductor") {
        const PlateForce f = *plate_force({sigma, 0.05}, 1, MomentAxis::normal, h, 1e7);
        CHECK(f.lift_N == Approx(3 * mu0 / (32 * pi * std::pow(h, 4))).epsilon(0.01)); // limit
    }
    SECTION("slow over a half space: drag by all depths") {
        // Limit: a pile of thin sheets, int 3 mu0^2 m^2 sigma v/(128 pi z^4) dz from h = mu0^2 m^2 sigma v/(128 pi
        // h^3).
        const double law = mu0 * mu0 * sigma * 1e-4 / (128 * pi * std::pow(h, 3));
        CHECK(plate_force({sigma, 10}, 1, MomentAxis::normal, h, 1e-4)->drag_N == Approx(law).epsilon(2e-3));
    }
    CHECK_FALSE(plate_force({0, 1}, 1, MomentAxis::normal, h, 1));
}

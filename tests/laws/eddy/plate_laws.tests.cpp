// Slit tube, off-axis travel and plate: limits and independent calculations.
#include "core/eddy/end_effect.hpp"
#include "core/eddy/magnet.hpp"
#include "core/eddy/plate.hpp"
#include "core/eddy/thin_wall.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

constexpr Magnet point{eddy::Shape::sphere, 1e-3, 0, 2e-3}; // on the scale of a wall of radius 1
constexpr Bore thin_wall{0.99999, 1.00001};

} // namespace

TEST_CASE("drag of slit tubes", "[eddy][law]") {
    // Independent calculation of the same integral (three figures); one slit by finite differences on the unrolled
    // wall: 0.767.
    const double table[][2] = {{1, 0.768}, {2, 0.583}, {3, 0.447}, {4, 0.348}, {6, 0.223}, {8, 0.151}, {12, 0.081}};
    for (const auto& [slits, share] : table)
        CHECK(slit_drag({static_cast<int>(slits)}, point, 1) == Approx(share).margin(6e-4));
    CHECK(slit_drag({1000}, point, 1) < 1e-4); // limit: no closed path is left
}

TEST_CASE("drag off the axis", "[eddy][law]") {
    // Independent calculation; finite differences: 1.052, 1.227, 1.598 at 0.1, 0.2, 0.3.
    const double table[][2] = {{0.05, 1.013}, {0.1, 1.052}, {0.15, 1.122}, {0.2, 1.228},
                               {0.3, 1.598},  {0.4, 2.35},  {0.5, 4.01}};
    for (const auto& [offset, factor] : table) {
        const auto got = off_axis_drag(offset, point, thin_wall);
        REQUIRE(got);
        CHECK(*got == Approx(factor).epsilon(2e-3));
    }
    CHECK(*off_axis_drag(0, point, thin_wall) == Approx(1));
    CHECK_FALSE(off_axis_drag(0.9, point, thin_wall));
}

TEST_CASE("plate: thin, thick, slow and fast", "[eddy][law]") {
    const double mu0 = vacuum_permeability, pi = std::numbers::pi, h = 0.02, sigma = 5.8e7, w = 2e-6;
    const Plate thin{sigma, w};
    SECTION("slow over a thin sheet") {
        // Limit: 3 mu0^2 m^2 sigma w v/(128 pi h^4) for a normal moment, three quarters of it along the motion.
        const double law = 3 * mu0 * mu0 * sigma * w * 0.01 / (128 * pi * std::pow(h, 4));
        CHECK(plate_force(thin, point, 1, MomentAxis::normal, h, 0.01)->drag_N == Approx(law).epsilon(1e-3));
        CHECK(plate_force(thin, point, 1, MomentAxis::along_motion, h, 0.01)->drag_N ==
              Approx(0.75 * law).epsilon(1e-3));
    }
    SECTION("Reitz's formula at any speed over a thin sheet") {
        // Reitz 1970 (from memory): drag = (3 mu0 m^2/(32 pi h^4)) (u0/v) [1 - 1/sqrt(1 + v^2/u0^2)], u0 = 2/(mu0 sigma
        // w).
        const double u0 = 2 / (mu0 * sigma * w), unit = 3 * mu0 / (32 * pi * std::pow(h, 4));
        for (const double times : {0.1, 0.5, 1.272, 3.0, 10.0}) {
            const PlateForce f = *plate_force(thin, point, 1, MomentAxis::normal, h, times * u0);
            CHECK(f.drag_N == Approx(unit / times * (1 - 1 / std::sqrt(1 + times * times))).epsilon(2e-3));
            CHECK(f.drag_N / f.lift_N == Approx(1 / times).epsilon(2e-3)); // drag over lift is u0/v
        }
    }
    SECTION("fast: the image of a perfect conductor") {
        const PlateForce f = *plate_force({sigma, 0.05}, point, 1, MomentAxis::normal, h, 1e7);
        CHECK(f.lift_N == Approx(3 * mu0 / (32 * pi * std::pow(h, 4))).epsilon(0.01)); // limit
    }
    SECTION("slow over a half space: drag by all depths") {
        // Limit: a pile of thin sheets, int 3 mu0^2 m^2 sigma v/(128 pi z^4) dz from h = mu0^2 m^2 sigma v/(128 pi
        // h^3).
        const double law = mu0 * mu0 * sigma * 1e-4 / (128 * pi * std::pow(h, 3));
        CHECK(plate_force({sigma, 10}, point, 1, MomentAxis::normal, h, 1e-4)->drag_N == Approx(law).epsilon(2e-3));
    }
    CHECK_FALSE(plate_force({0, 1}, point, 1, MomentAxis::normal, h, 1));
}

TEST_CASE("a standing cylinder over a perfect conductor is pushed by its image", "[eddy][law]") {
    // Independent method: the image's radial field (elliptic integrals) on the surface currents Br/mu0 of the magnet,
    // F = 2 pi R (Br/mu0) int B_r(R, z) dz over its length.
    const double pi = std::numbers::pi, mu0 = vacuum_permeability;
    for (const Magnet& m :
         {Magnet{eddy::Shape::cylinder, 6e-3, 0, 10e-3}, Magnet{eddy::Shape::cylinder, 9e-3, 0, 3e-3}})
        for (const double height : {8e-3, 20e-3}) {
            constexpr int steps = 400;
            double field = 0;
            for (int i = 0; i < steps; ++i) {
                const double z = 2 * height + m.length_m * ((i + 0.5) / steps - 0.5);
                field += radial_field_over_remanence(m, m.outer_radius_m * (1 + 1e-9), z) * m.length_m / steps;
            }
            const double law = 2 * pi * m.outer_radius_m / mu0 * std::abs(field); // for Br = 1 T
            const PlateForce f = *plate_force({5.8e7, 0.05}, m, moment_A_m2(m, 1, 1), MomentAxis::normal, height, 1e8);
            CAPTURE(m.length_m, height);
            CHECK(f.lift_N == Approx(law).epsilon(0.01)); // skin depth at 1e8 m/s: a thousandth of the height
        }
}

TEST_CASE("a magnet that is small against its height is a dipole, and a lying one near the plate is refused",
          "[eddy][law]") {
    const Magnet small{eddy::Shape::cylinder, 1e-3, 0, 1.7320508e-3}, dipole{eddy::Shape::sphere, 1e-3, 0, 2e-3};
    const Plate plate{3e7, 3e-3};
    const double got = plate_force(plate, small, 1, MomentAxis::normal, 0.05, 2)->drag_N;
    CHECK(got == Approx(plate_force(plate, dipole, 1, MomentAxis::normal, 0.05, 2)->drag_N).epsilon(2e-3)); // limit
    CHECK(plate_force(plate, small, 1, MomentAxis::along_motion, 0.05, 2));
    CHECK_FALSE(plate_force(plate, small, 1, MomentAxis::along_motion, 2e-3, 2));
    CHECK_FALSE(plate_force(plate, small, 1, MomentAxis::normal, 0.5e-3, 2)); // reaches into the plate
}

TEST_CASE("slits and off-axis travel of long magnets", "[eddy][law]") {
    // A long rod's field varies slowly along the tube, so that a slit costs more of its drag than of a short magnet's.
    const Magnet rod{eddy::Shape::cylinder, 0.6, 0, 8}, short_one{eddy::Shape::cylinder, 0.6, 0, 0.6};
    CHECK(slit_drag({1}, rod, 1) < 0.9 * slit_drag({1}, short_one, 1));
    CHECK(slit_drag({1}, short_one, 1) < 1);
    // Limits: no shift, and more drag the nearer the wall.
    CHECK(*off_axis_drag(1e-3, short_one, thin_wall) == Approx(1).epsilon(1e-4));
    CHECK(*off_axis_drag(0.2, short_one, thin_wall) > *off_axis_drag(0.1, short_one, thin_wall));
    CHECK_FALSE(off_axis_drag(0.39, short_one, thin_wall)); // rubs
}

// Slits of a width, seams that conduct, and slits that end in the tube: against finite differences on the unrolled wall
// (tests/eddy/slit_wall.py), and limits.
#include "core/eddy/drop_model.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;

namespace {

constexpr Magnet slit_ball{pourbook::eddy::Shape::sphere, 1e-3, 0, 2e-3}; // a dipole on the scale of a wall of radius 1
constexpr Magnet bar_in_7mm{pourbook::eddy::Shape::cylinder, 6.0 / 7, 0, 10.0 / 7};

struct Row {
    int slits;
    double narrow, tenth, third_tenths, seam_10, seam_100, wide_seam_10;
};

} // namespace

TEST_CASE("drag of slits of a width and of soldered seams", "[eddy][law]") {
    // Widths 0.1 and 0.3 open; seams 0.05 wide of 10 and 100 times the wall's resistivity, 0.2 wide of 10 times.
    const Row balls[] = {{1, 0.7677, 0.7522, 0.7210, 0.9477, 0.8261, 0.8711},
                         {2, 0.5827, 0.5542, 0.4977, 0.8964, 0.6719, 0.7503},
                         {4, 0.3481, 0.3055, 0.2261, 0.8024, 0.4509, 0.5580}},
              bars[] = {{1, 0.7566, 0.7411, 0.7100, 0.9471, 0.8197, 0.8681},
                        {2, 0.5650, 0.5367, 0.4810, 0.8953, 0.6610, 0.7451},
                        {4, 0.3288, 0.2879, 0.2122, 0.8009, 0.4384, 0.5522}};
    const auto held = [](const Magnet& m, const Row& r) {
        INFO(r.slits << " slits");
        constexpr double within = 2e-3; // of the whole tube's drag
        CHECK(slit_drag({r.slits}, m, 1) == Approx(r.narrow).margin(within));
        CHECK(slit_drag({r.slits, 0.1}, m, 1) == Approx(r.tenth).margin(within));
        CHECK(slit_drag({r.slits, 0.3}, m, 1) == Approx(r.third_tenths).margin(within));
        CHECK(slit_drag({r.slits, 0.05, 0.5}, m, 1) == Approx(r.seam_10).margin(within));
        CHECK(slit_drag({r.slits, 0.05, 5}, m, 1) == Approx(r.seam_100).margin(within));
        CHECK(slit_drag({r.slits, 0.2, 2}, m, 1) == Approx(r.wide_seam_10).margin(within));
    };
    for (const Row& r : balls) held(slit_ball, r);
    for (const Row& r : bars) held(bar_in_7mm, r);
}

TEST_CASE("limits of slits and seams", "[eddy][law]") {
    CHECK(slit_drag({3, 0.2, 0.2}, bar_in_7mm, 1) == Approx(1).epsilon(1e-9)); // filled with the wall's own metal
    CHECK(slit_drag({1, 0.05, 1e9}, bar_in_7mm, 1) == Approx(slit_drag({1, 0.05}, bar_in_7mm, 1)).epsilon(1e-6));
    // A long magnet's currents run round as one ring: seam and wall in series.
    const Magnet rod{pourbook::eddy::Shape::cylinder, 0.5, 0, 40};
    CHECK(slit_drag({1, 0, 2 * std::numbers::pi}, rod, 1) > 0.5);
    double before = 1;
    for (const double seam : {0.1, 1.0, 10.0, 100.0}) {
        const double now = slit_drag({1, 0.05, seam}, bar_in_7mm, 1);
        CHECK(now < before);
        before = now;
    }
}

TEST_CASE("a slit that ends in the tube takes its share of the way", "[eddy][law]") {
    DropInputs i;
    i.outer_radius_m = {6e-3};
    i.length_m = {10e-3};
    i.bore_radius_m = {6.5e-3};
    i.outside_radius_m = {7.5e-3};
    i.tube_length_m = {0.5};
    i.remanence_T = {1.3};
    i.mass_kg = {8.5e-3};
    const auto time_s = [](const DropInputs& inputs) {
        const DropModel model(inputs);
        return model.fall(model.setup(58e6)).time_s;
    };
    const double whole = time_s(i);
    i.slits = {1};
    const double slit = time_s(i);
    i.slit_length_m = 0.2;
    // Finite differences: as though it ended 0.2 to 0.28 wall radii (7 mm) higher.
    const double low = (0.2 - 0.28 * 7e-3) / 0.5, high = (0.2 - 0.2 * 7e-3) / 0.5, part = time_s(i);
    CHECK(part > whole + high * (slit - whole) - 2e-3 * whole);
    CHECK(part < whole + low * (slit - whole) + 2e-3 * whole);
    CHECK_FALSE(path_factor([&] {
        DropInputs end = i;
        end.slit_length_m = 0.498;
        return end;
    }()));
}

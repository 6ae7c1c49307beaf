// Off-axis travel summed over the wall, and a ball turned across the tube.
#include "core/eddy/drop_model.hpp"
#include "core/eddy/thin_wall.hpp"
#include "core/eddy/turned_ball.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook::eddy;

namespace {

Magnet ball(double diameter_mm) {
    return {pourbook::eddy::Shape::sphere, diameter_mm / 2e3, 0, diameter_mm / 1e3};
}

Magnet disc(double diameter_mm, double length_mm) {
    return {pourbook::eddy::Shape::cylinder, diameter_mm / 2e3, 0, length_mm / 1e3};
}

Bore tube(double bore_mm, double outside_mm) {
    return {bore_mm / 2e3, outside_mm / 2e3};
}

} // namespace

TEST_CASE("off the axis in walls of any thickness", "[eddy][law]") {
    // Independent calculation: fast Fourier transform of the real-space field on shells.
    CHECK(*off_axis_drag(3e-3, ball(6), tube(16, 24)) == Approx(1.739).epsilon(2e-3));
    CHECK(*off_axis_drag(2e-3, ball(6), tube(16, 20)) == Approx(1.305).epsilon(2e-3));
    CHECK(*off_axis_drag(0.8e-3, disc(15, 3), tube(17, 19)) == Approx(1.174).epsilon(2e-3));
    CHECK(*off_axis_drag(1e-9, ball(6), tube(16, 24)) == Approx(1));
}

TEST_CASE("a thin wall summed over its shells is the thin wall", "[eddy][law]") {
    // Limit: the same integral in a wall a hundred times thinner.
    for (const double d : {0.2e-3, 0.8e-3})
        CHECK(*off_axis_drag(d, disc(15, 3), tube(17, 17.002)) ==
              Approx(*off_axis_drag(d, disc(15, 3), tube(17, 17.00002))).epsilon(1e-4 * 2));
}

TEST_CASE("what riding adds lies between nothing and the furthest", "[eddy][law]") {
    DropInputs i;
    i.shape = pourbook::eddy::Shape::cylinder;
    i.outer_radius_m = {7.5e-3, 0, true};
    i.length_m = {3e-3, 0, true};
    i.bore_radius_m = {8.5e-3, 0, true};
    i.outside_radius_m = {9.5e-3, 0, true};
    const Riding r = with_riding(i).riding;
    CHECK(r.furthest_m == Approx(0.9e-3));
    CHECK(r.factor(1) == Approx(*off_axis_drag(0.9e-3, i.magnet(), i.bore())));
    for (const double s : {0.0, 0.25, 0.5, 0.75, 0.9}) {
        const double own = *off_axis_drag(s * r.furthest_m, i.magnet(), i.bore());
        CHECK(r.factor(s) == Approx(own).epsilon(2e-3));
    }
}

TEST_CASE("a ball across the tube", "[eddy][law]") {
    // Independent calculation in a thin wall, by the stream function of the current sheet: 0.686.
    CHECK(across_over_along(tube(26, 26.01)) == Approx(0.686).epsilon(2e-3));
    // Law: across the wall's whole thickness the ratio of the sums of thin shells that don't exchange current is 0.686
    // as well; where they do, more current flows.
    CHECK(across_over_along(tube(20, 40)) > across_over_along(tube(20, 24)));
    CHECK(across_over_along(tube(20, 24)) > across_over_along(tube(20, 20.01)));
    CHECK(across_over_along(tube(20, 40)) < 1);
}

// Walls of several parts: what must be one and the same, the thin wall's closed formula, and an independent
// calculation.
#include "core/eddy/drop_model.hpp"
#include "core/eddy/wall_modes.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;

namespace {

constexpr Magnet bar{pourbook::eddy::Shape::cylinder, 10e-3, 0, 20e-3};

/// Millimetres; conductivity over that of the first part.
WallPart part(double inner, double outer, double from, double to, double conductivity = 1, std::size_t piece = 0) {
    return {{inner / 1e3, outer / 1e3}, from / 1e3, to / 1e3, conductivity, piece};
}

/// The bar of 47 g and 1.3 T; an even tube where `parts` is empty.
DropInputs inputs(double bore_radius, double outside_radius, double length, std::vector<WallPart> parts = {}) {
    DropInputs i;
    i.outer_radius_m = {10e-3};
    i.length_m = {20e-3};
    i.bore_radius_m = {bore_radius / 1e3};
    i.outside_radius_m = {outside_radius / 1e3};
    i.tube_length_m = {length / 1e3};
    i.remanence_T = {1.3};
    i.mass_kg = {0.047};
    i.wall = std::move(parts);
    return i;
}

double time_s(const DropInputs& i, double conductivity_MS_m) {
    const DropModel model(i);
    const Fall f = model.fall(model.setup(conductivity_MS_m * 1e6));
    CHECK(f.fault == "");
    return f.time_s;
}

} // namespace

TEST_CASE("shells of a wall add up to the thin wall's formula", "[eddy][law]") {
    // Thin wall, dipole: k = 45 mu0^2 m^2 sigma w / (1024 a^4) (Saslow, Am. J. Phys. 60, 693, 1992, from memory), each
    // shell thin, a gap between any two: the wall's drag is their sum.
    const Magnet point{pourbook::eddy::Shape::sphere, 1e-3, 0, 2e-3};
    std::vector<WallPart> parts;
    double formula = 0, first = 0;
    for (int i = 0; i < 20; ++i) {
        const double radius = 10 + 0.4 * i, half = 5e-4, conductivity = 1 + 0.1 * i;
        parts.push_back(part(radius - half, radius + half, 0, 4000, conductivity));
        const double shell = conductivity / std::pow(radius, 4);
        if (i == 0) first = shell;
        formula += shell / first;
    }
    const WallProfile wall(point, parts);
    CHECK(wall.level(EndEffect(point, parts.front().bore)) == Approx(formula).epsilon(1e-4));
    const double k = 2 * std::numbers::pi * EndEffect(point, parts.front().bore).whole(),
                 moment = 1 / vacuum_permeability * point.volume_m3();
    CHECK(k ==
          Approx(45 * std::pow(vacuum_permeability * moment, 2) * 1e-6 / (1024 * std::pow(10e-3, 4))).epsilon(1e-4));
    CHECK(wall.even());
    CHECK(wall.share(2) == Approx(1).epsilon(1e-4));
}

TEST_CASE("a wall in parts of one metal falls as the whole wall", "[eddy][law]") {
    const double whole = time_s(inputs(11, 16, 300), 58);
    CHECK(time_s(inputs(11, 13, 300, {part(11, 13, 0, 300), part(13, 16, 0, 300, 1, 1)}), 58) ==
          Approx(whole).epsilon(3e-4)); // a sleeve without a gap
    CHECK(time_s(inputs(13, 16, 300, {part(13, 16, 0, 300), part(11, 13, 0, 300, 1, 1)}), 58) ==
          Approx(whole).epsilon(3e-4)); // a liner
    CHECK(time_s(inputs(11, 16, 300, {part(11, 16, 0, 120), part(11, 16, 120, 300, 1, 1)}), 58) ==
          Approx(whole).epsilon(3e-4)); // one below the other
    CHECK(time_s(inputs(11, 16, 300, tapered(bar, {11e-3, 16e-3}, {11e-3, 16e-3}, 0.3)), 58) ==
          Approx(whole).epsilon(3e-4));
}

TEST_CASE("a slow fall through two metals is the sum of both, and a taper between its ends", "[eddy][law]") {
    const auto two = [](double upper, double lower) {
        return time_s(inputs(11, 14, 400, {part(11, 14, 0, 200), part(11, 14, 200, 400, lower / upper, 1)}), upper);
    };
    CHECK(two(58, 20) == Approx((two(58, 58) + two(20, 20)) / 2).epsilon(5e-3)); // what each end lacks is alike
    CHECK(two(58, 20) == Approx(two(20, 58)).epsilon(5e-3));                     // turned over
    const double narrow = time_s(inputs(11, 16, 400), 58), wide = time_s(inputs(13, 16, 400), 58),
                 cone = time_s(inputs(13, 16, 400, tapered(bar, {13e-3, 16e-3}, {11e-3, 16e-3}, 0.4)), 58);
    CHECK((wide < cone && cone < narrow));
    // The mean of the drag along the way by Gauss, three points of even tubes.
    const double middle = time_s(inputs(12, 16, 400), 58), upper = time_s(inputs(12 + std::sqrt(0.6), 16, 400), 58),
                 lower = time_s(inputs(12 - std::sqrt(0.6), 16, 400), 58);
    CHECK(cone == Approx((5 * upper + 8 * middle + 5 * lower) / 18).epsilon(0.01));
}

TEST_CASE("a liner in a taper, of its metal, is the thicker taper", "[eddy][law]") {
    const Bore upper{12e-3, 16e-3}, lower{14e-3, 18e-3};
    for (const double length : {0.3, 0.03}) { // slow, and with its currents followed in time
        const double conductivity = length > 0.1 ? 58 : 300;
        std::vector<WallPart> lined = tapered(bar, upper, lower, length);
        for (const WallPart& p : tapered(bar, upper, lower, length))
            lined.push_back({{p.bore.inner_radius_m - 1e-3, p.bore.inner_radius_m}, p.from_m, p.to_m, 1, 1});
        const std::vector<WallPart> whole =
            tapered(bar, {upper.inner_radius_m - 1e-3, 16e-3}, {lower.inner_radius_m - 1e-3, 18e-3}, length);
        CHECK(time_s(inputs(12, 16, 1e3 * length, lined), conductivity) ==
              Approx(time_s(inputs(11, 16, 1e3 * length, whole), conductivity)).epsilon(3e-3));
    }
}

TEST_CASE("a taper's steps are as many as it needs, and its table runs as the sum of its parts", "[eddy][law]") {
    const Bore upper{11e-3, 16e-3};
    CHECK(tapered(bar, upper, {11.1e-3, 16e-3}, 0.3).size() == 4);
    CHECK(tapered(bar, upper, {22e-3, 27e-3}, 0.3).size() == 24);
    // Twice as many steps, by two tapers joined in the middle, change a slow fall by less than 3e-4.
    const Bore lower{12.5e-3, 16e-3}, middle{11.75e-3, 16e-3};
    std::vector<WallPart> finer = tapered(bar, upper, middle, 0.15);
    for (WallPart p : tapered(bar, middle, lower, 0.15)) {
        p.from_m += 0.15;
        p.to_m += 0.15;
        finer.push_back(p);
    }
    const std::vector<WallPart> parts = tapered(bar, upper, lower, 0.3);
    INFO(parts.size() << " steps, and " << finer.size());
    CHECK(time_s(inputs(11, 16, 300, parts), 58) == Approx(time_s(inputs(11, 16, 300, finer), 58)).epsilon(3e-4));
    const WallProfile wall(bar, parts);
    std::vector<EndEffect> ends;
    for (const WallPart& p : parts) ends.emplace_back(bar, p.bore);
    for (double z = -0.05; z < 0.35; z += 0.7e-3) {
        double sum = 0;
        for (std::size_t i = 0; i < parts.size(); ++i)
            sum += ends[i].whole() * (ends[i].share(z - parts[i].from_m) + ends[i].share(parts[i].to_m - z) - 1);
        CHECK(wall.share(z) * wall.level(ends[0]) * ends[0].whole() ==
              Approx(sum).epsilon(1e-4).margin(2e-5 * ends[0].whole()));
        CHECK(wall.slope_per_m(z) ==
              Approx((wall.share(z + 1e-6) - wall.share(z - 1e-6)) / 2e-6).epsilon(0.02).margin(0.05));
    }
}

TEST_CASE("short walls of several parts as an independent calculation in time has them", "[eddy][law]") {
    // tests/eddy/rings.py: own rings, LSODA; the fall at once, and what the currents' own time adds to it.
    struct Case {
        const char* what;
        DropInputs inputs;
        double conductivity, at_once_s, currents_s;
    };
    const Case cases[] = {
        {"sleeve with a gap", inputs(11, 13, 30, {part(11, 13, 0, 30), part(13.5, 16.5, 0, 30, 35.0 / 58, 1)}), 58,
         0.6952, -0.91e-3},
        {"liner, cold", inputs(12, 16, 24, {part(12, 16, 0, 24), part(11, 12, 0, 24, 100.0 / 477, 1)}), 477, 3.5577,
         -8.94e-3},
        {"two metals", inputs(11, 16, 30, {part(11, 16, 0, 15), part(11, 16, 15, 30, 100.0 / 477, 1)}), 477, 4.2921,
         -11.39e-3},
        {"taper", inputs(11, 16, 30, tapered(bar, {11e-3, 16e-3}, {13e-3, 16e-3}, 0.03)), 200, 2.0194, -4.40e-3}};
    for (const Case& c : cases) {
        const DropModel model(c.inputs);
        const FallSetup setup = model.setup(c.conductivity * 1e6);
        std::vector<WallPart> parts = c.inputs.wall;
        for (WallPart& p : parts) p.conductivity /= model.wall()->level(model.ends());
        const CurrentFall followed = fall_with_currents(setup, WallModes(bar, parts)),
                          finer = fall_with_currents(setup, WallModes(bar, parts, 1.4));
        const double at_once = fall(setup).time_s;
        INFO(c.what << ": at once " << at_once << " s, in time " << followed.fall.time_s << " s, finer "
                    << finer.fall.time_s << " s");
        CHECK(at_once == Approx(c.at_once_s).epsilon(3e-3));
        CHECK(followed.fall.time_s == Approx(c.at_once_s + c.currents_s).epsilon(3e-3));
        CHECK(followed.fall.time_s - at_once == Approx(c.currents_s).epsilon(0.1));
        CHECK(finer.fall.time_s == Approx(followed.fall.time_s).epsilon(3e-3));
        CHECK(std::abs(followed.balance) < 1e-6);
        CHECK(model.fall(setup).time_s == Approx(followed.fall.time_s)); // chosen by itself
    }
}

TEST_CASE("rings of parts are the rings of the whole wall", "[eddy][law]") {
    const double length = 30;
    const DropModel model(inputs(11, 16, length));
    const FallSetup setup = model.setup(477e6);
    const CurrentFall even = fall_with_currents(setup, WallModes(bar, model.inputs().bore(), length / 1e3)),
                      parts =
                          fall_with_currents(setup, WallModes(bar, {part(11, 13, 0, length), part(13, 16, 0, length)}));
    INFO(even.fall.time_s << " s, in parts " << parts.fall.time_s);
    CHECK(parts.fall.time_s == Approx(even.fall.time_s).epsilon(3e-3));
}

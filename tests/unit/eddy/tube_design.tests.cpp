// The lightest and the slowest tube against all tubes of a grid, and against the thin wall worked out by hand.
#include "core/eddy/tube_design.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

using namespace pourbook::eddy;

namespace {

DropInputs inputs(Shape shape, double magnet_m, double length_m, double bore_m) {
    DropInputs i;
    i.shape = shape;
    i.outer_radius_m = {magnet_m / 2, 0, true};
    i.length_m = {length_m, 0, true};
    i.bore_radius_m = {bore_m / 2, 0, true};
    i.outside_radius_m = {bore_m / 2 + 2e-3, 0, true};
    i.tube_length_m = {0.5, 0, true};
    i.remanence_T = {1.3, 0, true};
    i.density_kg_m3 = {7500, 0, true};
    return i;
}

constexpr int walls = 20, lengths = 30; // of the grid

struct Grid {
    double wall_step, length_step; // the first a ratio

    template <class Each> static Grid over(const TubeLimits& l, Each each) {
        const double ratio = std::pow(l.most_wall_m / l.least_wall_m, 1.0 / (walls - 1)),
                     step = (l.longest_m - l.shortest_m) / (lengths - 1);
        for (int a = 0; a < walls; ++a)
            for (int b = 0; b < lengths; ++b) each(l.least_wall_m * std::pow(ratio, a), l.shortest_m + step * b);
        return {ratio, step};
    }
};

} // namespace

TEST_CASE("twenty wishes: no tube of a grid is lighter or slower, and the grid's best is a step away", "[eddy]") {
    std::mt19937 random(3);
    const auto between = [&](double a, double b) {
        return a * std::pow(b / a, std::uniform_real_distribution<>(0, 1)(random));
    };
    for (int wish = 0; wish < 20; ++wish) {
        CAPTURE(wish);
        const double magnet = between(8e-3, 30e-3), bore = magnet + 2 * between(0.3e-3, 2e-3);
        const WallFamily family(inputs(Shape::cylinder, magnet, magnet * between(0.5, 2), bore));
        const TubeSearch search(family, bore / 2, between(5e6, 6e7), between(2700, 9000));
        TubeLimits l{between(0.5e-3, 4e-3), 30e-3, 2 * bore, between(0.15, 1.5), INFINITY};
        const double low = search.time_s(l.least_wall_m, l.shortest_m),
                     high = search.time_s(l.most_wall_m, l.longest_m);
        const double wanted = low * std::pow(high / low, std::uniform_real_distribution<>(0.1, 0.95)(random));
        const auto lightest = search.lightest(wanted, l);
        REQUIRE(lightest);
        CHECK(lightest->time_s >= wanted * (1 - 1e-5));
        double least = INFINITY;
        const Grid grid = Grid::over(l, [&](double wall, double length) {
            const double mass = search.mass_kg(wall, length);
            if (mass < least && search.time_s(wall, length) >= wanted) least = mass;
        });
        CHECK(lightest->mass_kg <= least * (1 + 1e-5));
        const double step = grid.wall_step * grid.wall_step * (1 + grid.length_step / lightest->length_m);
        CHECK(least <= lightest->mass_kg * step);

        l.most_mass_kg = search.mass_kg(l.least_wall_m, l.shortest_m) * between(1.5, 30);
        const auto slowest = search.slowest(l);
        REQUIRE(slowest);
        CHECK(slowest->mass_kg <= l.most_mass_kg * (1 + 1e-9));
        double longest = 0;
        Grid::over(l, [&](double wall, double length) {
            if (search.mass_kg(wall, length) <= l.most_mass_kg)
                longest = std::max(longest, search.time_s(wall, length));
        });
        CHECK(slowest->time_s >= longest * (1 - 1e-5));
        CHECK(slowest->length_m <= l.longest_m);
        CHECK(slowest->wall_m >= l.least_wall_m * (1 - 1e-9));
    }
}

TEST_CASE("a long thin tube round a ball has the mass that the thin wall's law asks for", "[eddy]") {
    // F = (45/1024) mu0^2 m^2 sigma w v / a^4 of a dipole in a thin wall; balance with the weight over L = v T gives
    // the tube's mass 2048 pi a^5 rho M g T / (45 mu0^2 m^2 sigma), whatever wall and length. Ends: 0.679 a more; the
    // run-up from rest takes v / g.
    const double a = 10e-3, magnet = 15e-3, sigma = 40e6, rho = 8900, wanted = 60;
    const WallFamily family(inputs(Shape::sphere, magnet, magnet, 2 * a));
    const TubeSearch search(family, a, sigma, rho);
    const double wall = 0.1e-3;
    const auto found = search.lightest(wanted, {wall, wall, 0.1, 100, INFINITY});
    REQUIRE(found);
    const double volume = std::numbers::pi / 6 * std::pow(magnet, 3), mass = 7500 * volume,
                 flux = 1.3 * volume; // mu0 m
    const double middle = a + wall / 2;
    const double by_hand = 2048 * std::numbers::pi * std::pow(middle, 5) * rho * mass * standard_gravity_m_s2 * wanted /
                           (45 * flux * flux * sigma);
    const double run_up = found->length_m / wanted / standard_gravity_m_s2;
    CHECK(found->mass_kg == Approx(by_hand * (1 - run_up / wanted) * (1 + 0.679 * a / found->length_m)).epsilon(5e-4));
    // Among thin walls the choice hardly matters; the thinner one is a little lighter.
    const auto thicker = search.lightest(wanted, {2 * wall, 2 * wall, 0.1, 100, INFINITY});
    REQUIRE(thicker);
    CHECK(thicker->mass_kg > found->mass_kg);
    CHECK(thicker->mass_kg < found->mass_kg * 1.06);
}

TEST_CASE("limits that leave no tube leave none", "[eddy]") {
    const WallFamily family(inputs(Shape::cylinder, 20e-3, 20e-3, 21e-3));
    const TubeSearch search(family, 10.5e-3, 5e6, 8000);
    CHECK_FALSE(search.lightest(1e4, {1e-3, 20e-3, 50e-3, 0.4, INFINITY}));
    CHECK_FALSE(search.lightest(1, {1e-3, 20e-3, 50e-3, 0.4, 1e-3})); // a gram
    CHECK_FALSE(search.slowest({1e-3, 20e-3, 50e-3, 0.4, 1e-3}));
}

// Motion over a plate against what can be worked out by hand: linear drag, the dipole over a half space.
#include "core/eddy/plate_motion.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;
using std::numbers::pi;

namespace {

constexpr double g = standard_gravity_m_s2;

ForceAtSpeed linear(double c_N_s_m) {
    return [c_N_s_m](double v) { return PlateForce{c_N_s_m * v, 0}; };
}

} // namespace

TEST_CASE("a slide settles where drag and friction take what the slope gives", "[eddy]") {
    const double mass = 0.05, c = 2, slope = 30 * pi / 180;
    CHECK(*slide(linear(c), 100, mass, slope, 0).speed_m_s == Approx(mass * g * 0.5 / c));
    CHECK(*slide(linear(c), 100, mass, slope, 0.2).speed_m_s == Approx(mass * g * (0.5 - 0.2 * std::cos(slope)) / c));
    const Slide held = slide(linear(c), 100, mass, slope, 0.6); // tan 30 deg is 0.577
    CHECK_FALSE(held.speed_m_s);
    CHECK(held.stays);
    const ForceAtSpeed weak = [](double v) { return PlateForce{0.1 * v / (1 + v * v), 0}; }; // peak 0.05 N at 1 m/s
    const Slide away = slide(weak, 1, mass, slope, 0);
    CHECK_FALSE(away.speed_m_s);
    CHECK_FALSE(away.stays);
}

TEST_CASE("a pendulum with linear drag loses its amplitude as exp(-c t / 2M)", "[eddy]") {
    const double mass = 0.2, length = 1, c = 0.05;
    const Swing s = swing(linear(c), mass, length, 0.1);
    CHECK(s.period_s == Approx(2 * pi * std::sqrt(length / g)));
    REQUIRE(s.half_after);
    CHECK(*s.half_after == Approx(std::log(2.0) * 2 * mass / c / s.period_s).epsilon(0.01));
    CHECK(s.rest_s == Approx(std::log(100.0) * 2 * mass / c).epsilon(0.02));
    // Heavily braked it does not swing at all: the slow part of the motion fades as exp(-g t M / (l c)).
    const double heavy = 20 * mass * std::sqrt(g / length);
    const Swing creeps = swing(linear(heavy), mass, length, 0.1);
    CHECK_FALSE(creeps.half_after);
    CHECK(creeps.rest_s == Approx(std::log(100.0) * heavy / mass / (g / length)).epsilon(0.02));
}

TEST_CASE("a dipole over a half space is braked by mu0^2 m^2 sigma v / (64 pi h^3)", "[eddy]") {
    const Magnet ball{Shape::sphere, 6e-3, 0, 12e-3}; // a dipole outside itself
    const double moment = moment_A_m2(ball, 1.3, 1), sigma = 58e6;
    const Block wide{10, 10, sigma};
    for (const double height : {7e-3, 15e-3, 40e-3}) {
        const double by_hand = std::pow(vacuum_permeability * moment, 2) * sigma / (64 * pi * std::pow(height, 3));
        CHECK(block_drag_N_s_m(ball, moment, wide, height) == Approx(by_hand).epsilon(2e-3));
    }
    // What lies deeper is a thinner share: a block of thickness t has 1 - (h / (h + t))^3 of it.
    const double h = 10e-3, t = 10e-3;
    CHECK(block_drag_N_s_m(ball, moment, {10, t, sigma}, h) / block_drag_N_s_m(ball, moment, wide, h) ==
          Approx(1 - 1.0 / 8).epsilon(2e-3));
}

TEST_CASE("a fall on a block is free without conductivity and settles with much of it", "[eddy]") {
    const Magnet ball{Shape::sphere, 10e-3, 0, 20e-3};
    const double moment = moment_A_m2(ball, 1.3, 1), mass = 0.031, gap = 20e-3;
    const BlockFall air = fall_on_block(ball, moment, mass, {0.1, 0.05, 1}, gap);
    CHECK(air.time_s == Approx(air.free_fall_s).epsilon(1e-3));
    CHECK(air.touch_m_s == Approx(std::sqrt(2 * g * gap)).epsilon(5e-3));
    // Settled from the first, v = M g / k(h): the time is the integral of k over the way, by hand over a half space.
    const double sigma = 3e9;
    const BlockFall cold = fall_on_block(ball, moment, mass, {10, 10, sigma}, gap);
    const double k = std::pow(vacuum_permeability * moment, 2) * sigma / (64 * pi),
                 by_hand = k / (mass * g) / 2 * (1 / std::pow(10e-3, 2) - 1 / std::pow(10e-3 + gap, 2));
    CHECK(cold.time_s == Approx(by_hand).epsilon(0.02));
    double before = 0;
    for (const double s : {1e6, 1e7, 1e8, 1e9}) {
        const double time = fall_on_block(ball, moment, mass, {0.05, 0.02, s}, gap).time_s;
        CHECK(time > before);
        before = time;
    }
}

// The truth lies inside the 90 % interval in 85 to 95 % of 500 seeded trials, for times, resistance and both.
#include "core/eddy/infer.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <random>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

DropInputs workshop() {
    DropInputs i;
    i.shape = eddy::Shape::cylinder;
    i.outer_radius_m = {6e-3, 0.025e-3, true};
    i.length_m = {10e-3, 0.05e-3, true};
    i.bore_radius_m = {6.5e-3, 0.025e-3, true};
    i.outside_radius_m = {7.5e-3, 0.025e-3, true};
    i.tube_length_m = {1, 1e-3, true};
    i.remanence_T = {1.30, 0.02, true};
    i.recoil_permeability = 1.05;
    i.mass_kg = {8.45e-3, 0.02e-3, false};
    return i;
}

/// What the workshop does not know: each input anywhere inside its limits.
struct Nature {
    std::mt19937_64 random;
    double uniform() { return std::uniform_real_distribution<double>(-1, 1)(random); }
    double normal() { return std::normal_distribution<double>()(random); }
    double of(const Uncertain& u) { return u.value + u.spread * (u.limits ? uniform() : normal()); }
};

struct Truth {
    DropInputs inputs;
    double conductivity = 0;
};

Truth drawn(const DropInputs& stated, Nature& nature) {
    Truth t{stated, 3e7 * std::exp(0.5 * nature.uniform())};
    for (Uncertain DropInputs::*member :
         {&DropInputs::outer_radius_m, &DropInputs::length_m, &DropInputs::bore_radius_m, &DropInputs::outside_radius_m,
          &DropInputs::tube_length_m, &DropInputs::remanence_T, &DropInputs::mass_kg})
        (t.inputs.*member).value = nature.of(stated.*member);
    return t;
}

/// The true fall: drag by the exact integral of the true geometry, not by sensitivities.
double true_time(const DropModel& model, const Truth& t) {
    const double moment = moment_A_m2(t.inputs.magnet(), t.inputs.remanence_T.value, t.inputs.recoil_permeability);
    const double k = TubeDrag(t.inputs.magnet(), t.inputs.bore()).coefficient_N_s_m(moment, t.conductivity);
    Variation v = model.nominal();
    v.drag = k / model.setup(t.conductivity).coefficient_N_s_m();
    v.mass_kg = t.inputs.mass_kg.value;
    v.tube_length_m = t.inputs.tube_length_m.value;
    return model.fall(model.setup(t.conductivity, v)).time_s;
}

TimedDrops timed(double time, std::size_t drops, Nature& nature) {
    TimedDrops d;
    for (std::size_t i = 0; i < drops; ++i) d.times_s.push_back(time + 0.12 * nature.normal());
    if (drops == 1) d.reading_s = 0.12;
    return d;
}

FourWire measured(const Truth& t, Nature& nature) {
    const double span = 0.9 + 0.5e-3 * nature.uniform();
    const double ohms = span / (t.conductivity * nominal_wall_area_m2(t.inputs)) * (1 + 0.01 * nature.normal());
    return {{ohms, 0.01 * ohms, false}, {0.9, 0.5e-3, true}};
}

bool inside(const Conductivity& c, double truth) {
    return c.low90_S_m <= truth && truth <= c.high90_S_m;
}

} // namespace

TEST_CASE("inference covers the truth in 85 to 95 % of 500 trials", "[eddy]") {
    const DropInputs stated = workshop();
    const DropModel model(stated);
    constexpr int trials = 500;
    int by_times = 0, by_one_time = 0, by_resistance = 0, by_both = 0;
    Nature nature{std::mt19937_64(20240607)};
    for (int trial = 0; trial < trials; ++trial) {
        const Truth truth = drawn(stated, nature);
        const double time = true_time(model, truth);
        Draws draws(400, static_cast<std::uint64_t>(trial) + 1);
        const auto variations = model.variations(draws);
        const auto several = conductivity_from_times(model, timed(time, 5, nature), variations, draws);
        const auto single = conductivity_from_times(model, timed(time, 1, nature), variations, draws);
        const auto wire =
            conductivity_from_resistance(measured(truth, nature), nominal_wall_area_m2(stated), variations, draws);
        REQUIRE((several && single && wire));
        by_times += inside(*several, truth.conductivity);
        by_one_time += inside(*single, truth.conductivity);
        by_resistance += inside(*wire, truth.conductivity);
        by_both += inside(combined(*several, *wire), truth.conductivity);
    }
    WARN("inside of " << trials << ": five drops " << by_times << ", one drop " << by_one_time << ", resistance "
                      << by_resistance << ", both " << by_both);
    for (const int hits : {by_times, by_one_time, by_resistance, by_both}) {
        CHECK(hits >= 0.85 * trials);
        CHECK(hits <= 0.95 * trials);
    }
}

TEST_CASE("scatter known from few drops: the interval covers the truth as often as it says", "[eddy]") {
    // All but the timing is known. Without Student's distribution 65 % of pairs and 76 % of threes would be covered.
    DropInputs exact = workshop();
    for (Uncertain DropInputs::*member :
         {&DropInputs::outer_radius_m, &DropInputs::length_m, &DropInputs::bore_radius_m, &DropInputs::outside_radius_m,
          &DropInputs::tube_length_m, &DropInputs::remanence_T, &DropInputs::mass_kg})
        (exact.*member).spread = 0;
    const DropModel model(exact);
    constexpr double sigma = 3e7;
    constexpr int trials = 400;
    const double time = fall(model.setup(sigma)).time_s;
    Nature nature{std::mt19937_64(20261130)};
    for (const std::size_t drops : {2u, 3u, 5u}) {
        int hits = 0;
        for (int trial = 0; trial < trials; ++trial) {
            Draws draws(1000, static_cast<std::uint64_t>(trial) + 1);
            TimedDrops seen = timed(time, drops, nature);
            const auto c = conductivity_from_times(model, seen, model.variations(draws), draws);
            REQUIRE(c);
            hits += inside(*c, sigma);
        }
        INFO(drops << " drops: inside " << hits << " of " << trials);
        CHECK(hits >= 0.86 * trials);
        CHECK(hits <= 0.94 * trials);
    }
}

TEST_CASE("without noise the inference returns what the fall was made of", "[eddy][law]") {
    const DropModel model(workshop());
    Draws draws(200, 1);
    const auto variations = model.variations(draws);
    for (const double sigma : {5e6, 3.5e7, 5.8e7, 4e8}) {
        const TimedDrops drops{{model.fall(model.setup(sigma)).time_s}, 0.01};
        const auto c = conductivity_from_times(model, drops, variations, draws);
        REQUIRE(c);
        CHECK(c->value_S_m == Approx(sigma).epsilon(1e-5)); // law: inverse of the fall
    }
}

TEST_CASE("inference refuses what says nothing", "[eddy]") {
    DropInputs heavy = workshop();
    const DropModel model(heavy);
    Draws draws(50, 1);
    CHECK_FALSE(conductivity_from_times(model, {{0.4}, 0.01}, model.variations(draws), draws)); // faster than free fall
    heavy.mass_kg = {20, 0.1, false};
    const DropModel falls(heavy);
    CHECK_FALSE(conductivity_from_times(falls, {{5.0}, 0.01}, falls.variations(draws), draws));
    CHECK_FALSE(conductivity_from_resistance({{0, 0, true}, {1, 0, true}}, 1e-4, model.variations(draws), draws));
}

TEST_CASE("fall and resistance are judged by their own ratio, which the shared sizes hardly move", "[eddy]") {
    // Sizes to 0.15 mm, resistance to 0.5 %: both conductivities are uncertain to some 8 %, their ratio to half of
    // that.
    DropInputs i;
    i.outer_radius_m = {6e-3, 0.075e-3, true};
    i.length_m = {10e-3, 0.15e-3, true};
    i.bore_radius_m = {6.6e-3, 0.075e-3, true};
    i.outside_radius_m = {7.6e-3, 0.075e-3, true};
    i.tube_length_m = {1, 0.5e-3, true};
    i.remanence_T = {1.3, 0.02, true};
    i.density_kg_m3 = {7500, 0, true};
    const DropModel model(i);
    Draws draws(4000, 1);
    const auto variations = model.variations(draws);
    const double sigma = 58e6, area = nominal_wall_area_m2(i);
    const auto wire = conductivity_from_resistance(
        {{0.9 / (sigma * area), 0.005 * 0.9 / (sigma * area), false}, {0.9, 0, true}}, area, variations, draws);
    REQUIRE(wire);
    const auto chance = [&](double less) {
        const double time = model.fall(model.setup(sigma * (1 - less))).time_s;
        const auto fallen = conductivity_from_times(model, {{time, time, time}, 0.01}, variations, draws);
        REQUIRE(fallen);
        return agreement(*fallen, *wire);
    };
    CHECK(chance(0.0) > 0.9);
    CHECK(chance(0.10) < 0.03);
    CHECK(chance(0.14) < 0.005);
    CHECK(chance(0.16) < 0.0015);
}

TEST_CASE("the chance of agreement is a chance: even where everything is right", "[eddy]") {
    const DropInputs stated = workshop();
    const DropModel model(stated);
    Nature nature{std::mt19937_64(7)};
    constexpr int trials = 300;
    int below_half = 0, below_fifth = 0;
    for (int trial = 0; trial < trials; ++trial) {
        const Truth truth = drawn(stated, nature);
        Draws draws(300, static_cast<std::uint64_t>(trial) + 1);
        const auto variations = model.variations(draws);
        const auto fallen =
            conductivity_from_times(model, timed(true_time(model, truth), 5, nature), variations, draws);
        const auto wire =
            conductivity_from_resistance(measured(truth, nature), nominal_wall_area_m2(stated), variations, draws);
        REQUIRE((fallen && wire));
        below_half += agreement(*fallen, *wire) < 0.5;
        below_fifth += agreement(*fallen, *wire) < 0.2;
    }
    WARN("of " << trials << " right pairs below one half " << below_half << ", below one fifth " << below_fifth);
    CHECK(below_half / double(trials) == Approx(0.5).margin(0.1));
    CHECK(below_fifth / double(trials) == Approx(0.2).margin(0.08));
}

TEST_CASE("a magnet 10 % weaker than stated is remarked", "[eddy]") {
    // Its fall says 19 % less conductivity than its resistance; the workshop's sizes, riding off the axis as it may.
    const DropInputs stated = with_riding(workshop());
    const DropModel model(stated);
    Nature nature{std::mt19937_64(11)};
    const char* wanted = std::getenv("POURBOOK_TRIALS"); // 1000 were run by hand
    const int trials = wanted ? std::atoi(wanted) : 100;
    int remarked = 0;
    for (int trial = 0; trial < trials; ++trial) {
        Truth truth = drawn(stated, nature);
        truth.inputs.remanence_T.value *= 0.9;
        const double riding = stated.riding.factor((1 + nature.uniform()) / 2);
        Draws draws(300, static_cast<std::uint64_t>(trial) + 1);
        const auto variations = model.variations(draws);
        Truth ridden = truth;
        ridden.conductivity *= riding; // brakes as that would on the axis
        const auto fallen =
            conductivity_from_times(model, timed(true_time(model, ridden), 5, nature), variations, draws);
        const auto wire =
            conductivity_from_resistance(measured(truth, nature), nominal_wall_area_m2(stated), variations, draws);
        REQUIRE((fallen && wire));
        remarked += agreement(*fallen, *wire) < 0.05;
    }
    WARN("remarked in " << remarked << " of " << trials);
    CHECK(remarked >= 0.9 * trials);
}

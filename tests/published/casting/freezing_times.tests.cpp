// Freezing times of the plan, with the figures of the reference, against a second model in one and three dimensions:
// eight metals, three sections (plate 3 mm, bar 10 mm, cube 50 mm), four temperatures of the shell. Aim: a factor 1.3;
// met 0.92 to 1.02.
#include "second_freezing.hpp"

#include "core/casting/freezing_plan.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::casting;

namespace {

struct Poured {
    const char* metal;
    double superheat_K;
    std::array<double, 4> mould_C;
};

constexpr std::array poured = {Poured{"copper", 120, {20, 300, 750, 950}},
                               Poured{"aluminium-a356-cast", 100, {20, 200, 350, 500}},
                               Poured{"bronze-gunmetal-88-10-2", 120, {20, 593, 732, 871}},
                               Poured{"bronze-silicon-cast", 120, {20, 300, 600, 800}},
                               Poured{"sterling-silver", 80, {20, 300, 550, 700}},
                               Poured{"za-12", 80, {20, 150, 250, 340}},
                               Poured{"brass-cartridge", 80, {20, 300, 600, 800}},
                               Poured{"tin", 80, {20, 100, 150, 200}}};

FreezingPlan planned(const Poured& p, const casting::Shape& shape, double mould_C) {
    const Catalogue& c = pourbook::testing::real_catalogue();
    const Material m{c, *c.metal(p.metal), Conditions{}};
    FreezingInputs in;
    in.process = "shell";
    in.part = *measured(shape);
    in.pour_K = liquidus(m)->value_si + p.superheat_K;
    in.mould_K = mould_C + 273.15;
    const auto plan = freezing_plan(m, in);
    INFO(p.metal << ": " << (plan ? "" : plan.problem().text));
    REQUIRE(plan);
    return *plan;
}

void compare(const Poured& p, double mould_C, double ours_s, double second_s) {
    INFO(p.metal << ", shell at " << mould_C << " degC: " << ours_s << " s, second model " << second_s << " s");
    CHECK(ours_s < 1.15 * second_s);
    CHECK(ours_s > second_s / 1.15);
}

} // namespace

TEST_CASE("freezing of a 3 mm plate and a 10 mm bar in a shell against a second model, eight metals") {
    for (const Poured& p : poured)
        for (const double mould_C : p.mould_C) {
            const FreezingPlan plate = planned(p, {Form::plate, {0.2, 0.1, 0.003}}, mould_C);
            compare(p, mould_C, plate.time_s.value_si,
                    pourbook::testing::SecondFreezing(plate.reckoned).line_s(0.0015, 0));
            const FreezingPlan bar = planned(p, {Form::bar, {0.01, 0.1, 0}}, mould_C);
            compare(p, mould_C, bar.time_s.value_si, pourbook::testing::SecondFreezing(bar.reckoned).line_s(0.005, 1));
        }
}

TEST_CASE("freezing of a 50 mm cube in a shell against three dimensions, eight metals") {
    for (const Poured& p : poured)
        for (const double mould_C : p.mould_C) {
            const FreezingPlan cube = planned(p, {Form::plate, {0.05, 0.05, 0.05}}, mould_C);
            compare(p, mould_C, cube.time_s.value_si,
                    pourbook::testing::SecondFreezing(cube.reckoned).cube_s(0.05, 6, 4));
        }
}

TEST_CASE("the second model and the first agree on a ball") {
    const FreezingPlan ball = planned(poured[0], {Form::sphere, {0.05, 0, 0}}, 750);
    compare(poured[0], 750, ball.time_s.value_si, pourbook::testing::SecondFreezing(ball.reckoned).line_s(0.025, 2));
}

#include "charts/axis.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

std::string texts(const Axis& axis, int wanted) {
    std::string out;
    for (const Tick& t : ticks(axis, wanted)) out += (out.empty() ? "" : " ") + t.text;
    return out;
}

} // namespace

TEST_CASE("linear ticks are round and inside the axis") {
    CHECK(texts({0, 1, false}, 5) == "0.0 0.2 0.4 0.6 0.8 1.0");
    CHECK(texts({0, 1800, false}, 9) == "0 200 400 600 800 1000 1200 1400 1600 1800");
    CHECK(texts({-273, 227, false}, 5) == "−200 −100 0 100 200");
    CHECK(texts({0.93, 1.07, false}, 4) == "0.95 1.00 1.05");
}

TEST_CASE("logarithmic ticks are decades, with more between where there is room") {
    CHECK(texts({1, 1000, true}, 4) == "1 10 100 1000");
    CHECK(texts({0.8, 12, true}, 8) == "1 2 5 10");
    CHECK(texts({1e-9, 1, true}, 4) == "10⁻⁹ 10⁻⁶ 0.001 1");
}

TEST_CASE("an axis places values and rounds its ends outwards") {
    Axis axis{3, 97, false, 100, 300};
    round_out(axis);
    CHECK(axis.low == 0);
    CHECK(axis.high == 100);
    CHECK(axis.place(50) == Approx(200));
    Axis log{1, 100, true, 0, 100};
    CHECK(log.place(10) == Approx(50));
    Axis point{5, 5, false, 0, 1};
    round_out(point);
    CHECK(point.low < 5);
    CHECK(point.high > 5);
}

TEST_CASE("nearer keeps the value under the pointer, further never shows more than all") {
    for (const bool log : {false, true}) {
        const Axis home{10, 1000, log, 0, 500};
        const double under = home.value(200);
        Axis axis = home;
        for (int i = 0; i < 10; ++i) axis = kept_near(nearer(axis, axis.share(under), 0.8), home);
        axis.from = home.from;
        axis.to = home.to;
        CHECK(axis.place(under) == Approx(200));
        CHECK(axis.low > home.low);
        CHECK(axis.high < home.high);
        for (int i = 0; i < 40; ++i) axis = kept_near(nearer(axis, 0.3, 1.25), home);
        CHECK(axis.low == Approx(home.low));
        CHECK(axis.high == Approx(home.high));
        const Axis near = kept_near(nearer(home, 0.5, 0.25), home);
        const Axis far_right = kept_near(moved(near, 100), home);
        CHECK(far_right.high == Approx(home.high));
        CHECK(home.share(far_right.high) - home.share(far_right.low) == Approx(0.25));
    }
}

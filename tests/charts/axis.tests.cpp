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

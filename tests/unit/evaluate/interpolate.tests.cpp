#include "core/evaluate/interpolate.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;

namespace {

std::vector<Point> points(std::vector<std::pair<double, double>> data) {
    std::vector<Point> out;
    for (const auto& [t, v] : data) {
        Point p;
        p.temperature_K = t;
        p.value_si = v;
        out.push_back(p);
    }
    return out;
}

} // namespace

TEST_CASE("interpolation keeps the printed points and straight lines") {
    const auto line = points({{100, 1}, {200, 2}, {250, 2.5}, {400, 4}});
    for (double t : {100.0, 150.0, 233.0, 399.0, 400.0}) CHECK(interpolate(line, t).value_si == Approx(t / 100));
    CHECK(interpolate(line, 150).doubt_si == Approx(0).margin(1e-12));
}

TEST_CASE("law: a rising series stays rising between its points") {
    const auto rising = points({{1, 0.001}, {20, 0.002}, {40, 0.02}, {60, 0.1}, {80, 0.2}, {300, 1.7}, {301, 9}});
    double before = 0;
    for (double t = 1; t <= 301; t += 0.25) {
        const double now = interpolate(rising, t).value_si;
        CHECK(now >= before);
        before = now;
    }
}

TEST_CASE("a smooth law is met between points within the doubt") {
    // Bloch-like low-temperature rise, T^3, sampled coarsely: the doubt must cover the error.
    std::vector<std::pair<double, double>> data;
    for (double t = 20; t <= 100; t += 10) data.emplace_back(t, std::pow(t / 100, 3));
    const auto series = points(data);
    for (double t = 25; t < 100; t += 10) {
        const Interpolated x = interpolate(series, t);
        CHECK(std::abs(x.value_si - std::pow(t / 100, 3)) <= x.doubt_si);
    }
}

TEST_CASE("ends and short series") {
    CHECK(std::isnan(interpolate(points({}), 10).value_si));
    CHECK(interpolate(points({{10, 5}}), 99).value_si == 5);
    CHECK(interpolate(points({{10, 5}, {20, 7}}), 15).value_si == Approx(6));
}

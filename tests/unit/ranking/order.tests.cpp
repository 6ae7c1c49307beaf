#include "core/ranking/order.hpp"
#include "core/uncertainty/draws.hpp"

#include "support/contenders.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numeric>

using namespace pourbook;
using namespace pourbook::testing;

TEST_CASE("normal quantiles are those of the table") {
    // Standard normal table, for example NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.1.
    CHECK(normal_quantile(0.5) == Approx(0).margin(1e-12));
    CHECK(normal_quantile(0.975) == Approx(1.959963984540054).epsilon(1e-12));
    CHECK(normal_quantile(0.95) == Approx(1.6448536269514722).epsilon(1e-12));
    CHECK(normal_quantile(1e-6) == Approx(-4.753424308822899).epsilon(1e-10));
}

TEST_CASE("draws: same cause and seed, same numbers, and stratified, so mean and spread are exact enough") {
    Draws a(1000, 7), b(1000, 7), other(1000, 8);
    CHECK(a.of("price.copper") == b.of("price.copper"));
    CHECK(a.of("price.copper") != a.of("price.silver"));
    CHECK(a.of("price.copper") != other.of("price.copper"));
    const auto& x = a.of("price.copper");
    const double mean = std::accumulate(x.begin(), x.end(), 0.0) / 1000;
    CHECK(std::abs(mean) < 0.005);
    double variance = 0;
    for (double v : x) variance += v * v / 1000;
    CHECK(variance == Approx(1).epsilon(0.02));
}

TEST_CASE("two independent contenders: the chance of being first is that of the normal difference") {
    // P(A > B) for A ~ N(11, 1), B ~ N(10, 1) is Phi(1 / sqrt 2) = 0.7602 (exact).
    Draws draws(20000, 1);
    std::vector<Contender> two = {{"a", 11, draws.of("a")}, {"b", 10, draws.of("b")}};
    for (double& x : two[0].samples) x += 11;
    for (double& x : two[1].samples) x += 10;
    const auto places = in_order(two, true);
    CHECK(places[0].p_first == Approx(0.7602).margin(0.01));
    CHECK(places[0].tied_with == std::vector<std::string>{"b"});
    CHECK(places[0].high90 - places[0].low90 == Approx(2 * 1.6449).epsilon(0.01));
}

TEST_CASE("contenders that share a cause keep their order however large it is") {
    Draws draws(500, 3);
    std::vector<Contender> two = {{"a", 1.01, {}}, {"b", 1, {}}};
    for (double z : draws.of("shared")) {
        two[0].samples.push_back(1.01 * std::exp(0.5 * z));
        two[1].samples.push_back(std::exp(0.5 * z));
    }
    const auto places = in_order(two, true);
    CHECK(places[0].p_first == 1);
    CHECK(places[0].tied_with.empty());
}

TEST_CASE("low can be best, and without samples the order is that of the values") {
    const auto places = in_order({{"a", 3, {}}, {"b", 1, {}}, {"c", 2, {}}}, false);
    CHECK(places[0].contender == 1);
    CHECK(places[2].contender == 0);
    CHECK(places[0].rank == 1);
    CHECK((std::isnan(places[0].p_first) && std::isnan(places[0].low90) && places[0].rank_low == 0)); // nothing varied
}

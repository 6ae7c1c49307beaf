// Invented workshops whose truth is known: what three trials teach of the next casting must be neither boast nor waste.
#include "core/evaluate/sampled.hpp"
#include "core/laws/own_castings.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

struct Interval {
    double low, high;

    bool holds(double x) const { return low <= x && x <= high; }
    double width() const { return std::log(high / low); }
};

Interval interval_of(const Catalogue& c, const Metal& metal) {
    Conditions casting;
    casting.casting.emplace();
    casting.story = false;
    Draws draws(1000, 1);
    std::vector<double> x = sampled(*evaluate(c, metal, "conductivity", casting), draws);
    return {quantile(x, 0.05), quantile(x, 0.95)};
}

std::vector<double> hidden_means(const Catalogue& c, const Metal& metal) {
    Conditions casting;
    casting.casting.emplace();
    Draws draws(997, 77); // other draws than those of the answer
    return sampled(*evaluate(c, metal, "conductivity", casting), draws);
}

} // namespace

TEST_CASE("after three trials the interval of the next casting holds it in 85 to 95 of 100 workshops") {
    Catalogue c = real_catalogue();
    std::mt19937_64 random(20261130);
    std::normal_distribution<double> normal;
    const char* metals[] = {"copper", "copper-etp", "silver-999", "sterling-silver", "aluminium"};
    constexpr double reading = 0.02, magnet = 0.02;
    int held = 0, narrower = 0, workshops = 0;
    for (const char* slug : metals) {
        const Metal& metal = *c.metal(slug);
        c.own_castings.clear();
        const std::vector<double> means = hidden_means(c, metal);
        const Interval before = interval_of(c, metal);
        for (int w = 0; w < 40; ++w, ++workshops) {
            const double mean = means[random() % means.size()], bias = magnet * normal(random);
            const double scatter = std::uniform_real_distribution<double>(0.01, 0.04)(random);
            c.own_castings.clear();
            for (int trial = 0; trial < 3; ++trial)
                c.own_castings.push_back({slug,
                                          mean * std::exp(scatter * normal(random) + reading * normal(random) + bias),
                                          std::hypot(reading, magnet), "magnet", magnet});
            const Interval after = interval_of(c, metal);
            held += after.holds(mean * std::exp(scatter * normal(random)));
            narrower += after.width() < before.width();
        }
    }
    INFO("held " << held << ", narrower " << narrower << " of " << workshops);
    CHECK(workshops == 200);
    CHECK(held >= 170);
    CHECK(held <= 190);
    CHECK(narrower >= 160);
}

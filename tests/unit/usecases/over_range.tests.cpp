// A range of temperatures: the worst over it counts, in a ranking, in one against another and in two goals at once.
#include "questions/metals/temperature_words.hpp"
#include "questions/rank/tradeoff.hpp"
#include "questions/rank/versus.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

VersusRequest copper_against_silver(const std::string& formula, double from_K, double to_K = no_number) {
    VersusRequest v;
    v.a = "copper";
    v.b = "silver";
    v.goal.formula = formula;
    v.conditions.temperature_K = from_K;
    v.to_K = to_K;
    v.samples = 300;
    return v;
}

bool says(const VersusResult& r, const std::string& words) {
    return r.sentence.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a temperature or a rising range of them is read") {
    CHECK(temperature_range("77K")->from_K == 77);
    CHECK_FALSE(temperature_range("77K")->to_K);
    CHECK(*temperature_range("0 degC : 26.85 degC")->to_K == Approx(300));
    for (const char* wrong : {"", "77K:", ":300K", "300K:77K", "77K:77K", "77K:300K:400K", "-300 degC", "77 kg"})
        CHECK_FALSE(temperature_range(wrong));
}

TEST_CASE("versus over a range: each metal's worst counts, and the sentence says which end decides") {
    const VersusResult over = *versus(real_catalogue(), copper_against_silver("conductivity", 77, 300)),
                       warm = *versus(real_catalogue(), copper_against_silver("conductivity", 300)),
                       cold = *versus(real_catalogue(), copper_against_silver("conductivity", 77));
    CHECK(cold.better.metal->slug == "copper");
    CHECK(over.better.metal->slug == "silver"); // a metal conducts worst where it is warmest
    CHECK(over.better.at_K == Approx(300));
    CHECK(over.ratio_median == Approx(warm.ratio_median));
    CHECK(over.p_winner == Approx(warm.p_winner));
    CHECK(says(over, " from -196.15 °C to 26.85 °C"));
    CHECK(says(over, "at the warm end, 26.85 °C"));
    CHECK_FALSE(says(warm, " end"));
    const VersusResult heat = *versus(real_catalogue(), copper_against_silver("resistivity", 77, 300)); // highest best
    CHECK(says(heat, "at the cold end, -196.15 °C"));
    VersusRequest nearest = copper_against_silver("abs(conductivity - 250 MS/m)", 77, 300);
    nearest.goal.best_high = false; // copper is furthest from it at 77 K (513 MS/m), silver at 300 K (62 MS/m)
    CHECK(says(*versus(real_catalogue(), nearest), "copper (high purity) at the cold end"));
    CHECK(says(*versus(real_catalogue(), nearest), "silver (fine) at the warm end"));
    CHECK_FALSE(versus(real_catalogue(), copper_against_silver("conductivity", 77, 5000))); // not cited so far
}

TEST_CASE("two goals over a range are two rankings over it") {
    TradeoffRequest t;
    t.first.formula = "conductivity";
    t.second.formula = "resistivity";
    t.second.best_high = false;
    t.from = {"copper", "silver", "aluminium"};
    t.samples = 200;
    t.conditions.temperature_K = 77;
    t.to_K = 300;
    const TradeoffResult both = *tradeoff(real_catalogue(), t);
    CHECK(both.to_K == 300);
    RankRequest r{t.first, t.from, t.conditions, t.to_K, 0, t.samples, t.seed};
    const RankResult first = *rank(real_catalogue(), r);
    r.goal = t.second;
    const RankResult second = *rank(real_catalogue(), r);
    REQUIRE(both.points.size() == 3);
    const auto median = [](const RankResult& of, const Metal* metal) {
        return std::find_if(of.ranked.begin(), of.ranked.end(), [&](const RankedMetal& m) { return m.metal == metal; })
            ->place.median;
    };
    for (const TradeoffPoint& p : both.points) {
        CHECK(p.first.median == median(first, p.metal));
        CHECK(p.second.median == median(second, p.metal));
    }
}

TEST_CASE("a formula as the second goal answers as the named goal with that formula") {
    TradeoffRequest t;
    t.first.goal = "strongest-brake";
    t.second.goal = "light-conductor"; // density * resistivity, lowest
    t.from = {"copper", "silver", "aluminium", "lead"};
    t.samples = 200;
    const TradeoffResult named = *tradeoff(real_catalogue(), t);
    t.second.goal.clear();
    t.second.formula = "density * resistivity";
    t.second.best_high = false;
    const TradeoffResult written = *tradeoff(real_catalogue(), t);
    CHECK_FALSE(written.second_high);
    REQUIRE(written.points.size() == named.points.size());
    for (std::size_t i = 0; i < named.points.size(); ++i) {
        CHECK(written.points[i].metal == named.points[i].metal);
        CHECK(written.points[i].on_front == named.points[i].on_front);
        CHECK(written.points[i].second.median == named.points[i].second.median);
    }
    t.second.formula = "density +";
    CHECK(tradeoff(real_catalogue(), t).problem().kind == Problem::Kind::unreadable);
}

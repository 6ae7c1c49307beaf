// Laws of ranking: what must hold whatever the figures are.
#include "core/ranking/order.hpp"
#include "core/uncertainty/draws.hpp"
#include "usecases/rank.hpp"
#include "usecases/tradeoff.hpp"
#include "usecases/versus.hpp"

#include "support/contenders.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <thread>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

RankRequest request(const std::string& formula) {
    RankRequest r;
    r.goal.formula = formula;
    r.samples = 500;
    return r;
}

std::vector<std::string> order(const RankResult& r) {
    std::vector<std::string> out;
    for (const RankedMetal& m : r.ranked) out.push_back(m.metal->slug);
    return out;
}

} // namespace

TEST_CASE("law: the same seed gives the same result to the last digit, on one thread or two") {
    const Catalogue& c = real_catalogue();
    const RankRequest r = request("conductivity / (density * price)");
    RankResult here = *rank(c, r), there;
    std::thread other([&] { there = *rank(c, r); });
    const RankResult meanwhile = *rank(c, r);
    other.join();
    for (const RankResult* x : std::initializer_list<const RankResult*>{&there, &meanwhile}) {
        REQUIRE(x->ranked.size() == here.ranked.size());
        for (std::size_t i = 0; i < here.ranked.size(); ++i) {
            const Place &a = here.ranked[i].place, &b = x->ranked[i].place;
            CHECK((a.median == b.median && a.low90 == b.low90 && a.high90 == b.high90 && a.p_first == b.p_first));
        }
    }
}

TEST_CASE("law: the chances of being first sum to 1, and ranks lie inside their intervals") {
    const RankResult r = *rank(real_catalogue(), request("conductivity"));
    double sum = 0;
    for (const RankedMetal& m : r.ranked) {
        sum += m.place.p_first;
        CHECK(m.place.low90 <= m.place.median);
        CHECK(m.place.median <= m.place.high90);
        CHECK(m.place.rank_low <= m.place.rank_high);
    }
    CHECK(sum == Approx(1));
}

TEST_CASE("law: scaling every price by a constant changes no order and no chance") {
    Catalogue c = real_catalogue();
    for (PriceSet& set : c.price_sets)
        for (Price& p : set.prices)
            for (double* x : {&p.usd_per_kg, &p.low_usd_per_kg, &p.high_usd_per_kg})
                *x *= 1024; // a power of two: exact in binary
    c.index();
    const RankResult a = *rank(real_catalogue(), request("conductivity / (density * price)")),
                     b = *rank(c, request("conductivity / (density * price)"));
    CHECK(order(a) == order(b));
    for (std::size_t i = 0; i < a.ranked.size(); ++i) CHECK(a.ranked[i].place.p_first == b.ranked[i].place.p_first);
}

TEST_CASE("law: a metal better in every property of the goal is ranked ahead (dominance)") {
    const RankResult r = *rank(real_catalogue(), request("conductivity / (density * price)"));
    const auto better = [](const RankedMetal& x, const RankedMetal& y) {
        return x.inputs[0].value.value_si > y.inputs[0].value.value_si &&
               x.inputs[1].value.value_si < y.inputs[1].value.value_si &&
               x.inputs[2].value.value_si < y.inputs[2].value.value_si;
    };
    for (std::size_t i = 0; i < r.ranked.size(); ++i)
        for (std::size_t j = i + 1; j < r.ranked.size(); ++j) CHECK_FALSE(better(r.ranked[j], r.ranked[i]));
}

TEST_CASE("law: best low is the mirror of best high for the reciprocal") {
    RankRequest low = request("resistivity");
    low.goal.best_high = false;
    const RankResult a = *rank(real_catalogue(), low), b = *rank(real_catalogue(), request("conductivity"));
    REQUIRE(a.ranked.size() == b.ranked.size());
    for (std::size_t i = 0; i < a.ranked.size(); ++i) // metals of equal value may change places
        CHECK(a.ranked[i].place.median * b.ranked[i].place.median == Approx(1).epsilon(1e-4));
}

TEST_CASE("law: versus is antisymmetric and a metal ties with itself") {
    VersusRequest ab{"copper", "aluminium", {}, {}, 1000, 1}, ba{"aluminium", "copper", {}, {}, 1000, 1},
        aa{"copper", "copper", {}, {}, 1000, 1};
    for (VersusRequest* v : {&ab, &ba, &aa}) v->goal.formula = "conductivity / density";
    const VersusResult x = *versus(real_catalogue(), ab), y = *versus(real_catalogue(), ba),
                       self = *versus(real_catalogue(), aa);
    CHECK((x.better.metal == y.better.metal && x.ratio_median == y.ratio_median && x.p_winner == y.p_winner));
    CHECK((self.tie && self.ratio_median == 1 && self.p_winner == 0.5));
}

TEST_CASE("calibration: with a synthetic truth the 90 % intervals hold it 85 to 95 % of the time, and 'told apart' is "
          "right") {
    // Truth drawn around the published value with the stated uncertainty, as the sampling assumes; 60 metals, 40
    // rounds.
    constexpr int metals = 60, rounds = 40;
    int inside = 0, pairs = 0, wrong = 0;
    for (int round = 0; round < rounds; ++round) {
        Draws truth_draws(1000, static_cast<std::uint64_t>(1000 + round));
        Draws draws(800, 1);
        std::vector<Contender> contenders;
        std::vector<double> truth;
        for (int i = 0; i < metals; ++i) {
            const std::string key = "metal" + std::to_string(i);
            const double u = 0.01 + 0.1 * (i % 7) / 7, published = 1 + 0.05 * i;
            truth.push_back(published * std::exp(u * truth_draws.of(key)[0]));
            Contender c{key, published, {}};
            for (double z : draws.of(key)) c.samples.push_back(published * std::exp(u * z));
            contenders.push_back(std::move(c));
        }
        const auto places = in_order(contenders, true);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const double t = truth[places[i].contender];
            inside += t >= places[i].low90 && t <= places[i].high90 ? 1 : 0;
            for (std::size_t j = i + 1; j < places.size(); ++j) {
                const auto& ties = places[i].tied_with;
                if (std::find(ties.begin(), ties.end(), contenders[places[j].contender].name) != ties.end()) continue;
                ++pairs;
                wrong += t < truth[places[j].contender] ? 1 : 0;
            }
        }
    }
    const double held = static_cast<double>(inside) / (metals * rounds);
    INFO("held " << held << ", told apart wrongly " << wrong << " of " << pairs);
    CHECK(held > 0.85);
    CHECK(held < 0.95);
    CHECK(static_cast<double>(wrong) / pairs < 0.05); // pairs told apart at 95 % or more
}

TEST_CASE("law: nothing on the front is beaten, and whoever is off it is beaten by the metal named") {
    TradeoffRequest request;
    request.first.goal = "strongest-brake";
    request.second.goal = "braking-per-cost";
    request.samples = 50;
    const TradeoffResult r = *tradeoff(real_catalogue(), request);
    REQUIRE(r.points.size() > 40);
    const auto beats = [](const TradeoffPoint& a, const TradeoffPoint& b) {
        return a.first.median >= b.first.median && a.second.median >= b.second.median &&
               (a.first.median > b.first.median || a.second.median > b.second.median);
    };
    for (const TradeoffPoint& p : r.points) {
        const bool beaten =
            std::any_of(r.points.begin(), r.points.end(), [&](const TradeoffPoint& other) { return beats(other, p); });
        INFO(p.metal->slug);
        CHECK(p.on_front != beaten);
        if (beaten) CHECK_FALSE(p.beaten_by.empty());
    }
}

#include "questions/rank/rank.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

RankRequest by_formula(const std::string& formula) {
    RankRequest r;
    r.goal.formula = formula;
    r.samples = 400;
    return r;
}

} // namespace

TEST_CASE("a formula orders the metals, and what has no value is named with the reason") {
    Catalogue c = small_catalogue();
    c.metals[1].records.erase(c.metals[1].records.begin()); // ab loses its resistivity
    c.index();
    const auto r = rank(c, by_formula("conductivity"));
    REQUIRE(r);
    REQUIRE(r->ranked.size() == 2);
    CHECK(r->ranked[0].metal->slug == "aa");
    REQUIRE(r->unrankable.size() == 1);
    CHECK(r->unrankable[0].metal->slug == "ab");
    CHECK(r->unrankable[0].missing == std::vector<std::string>{"conductivity"});
    CHECK_FALSE(r->unrankable[0].reason.empty());
}

TEST_CASE("a price deleted: the metal and its alloys are unrankable with the price named") {
    Catalogue c = small_catalogue();
    c.price_sets.front().prices.erase(c.price_sets.front().prices.begin());
    c.index();
    const auto r = rank(c, by_formula("conductivity / (density * price)"));
    REQUIRE(r);
    REQUIRE(r->unrankable.size() == 2);
    for (const LeftOut& l : r->unrankable) {
        CHECK(l.missing == std::vector<std::string>{"price"});
        CHECK(l.reason.find("price of aa") != std::string::npos);
    }
}

TEST_CASE("the same seed gives the same numbers, and another candidate changes no other's draws") {
    const Catalogue c = small_catalogue();
    RankRequest all = by_formula("conductivity * density"), two = all;
    two.from = {"aa", "bb"};
    const auto a = rank(c, all), b = rank(c, all), fewer = rank(c, two);
    for (const RankedMetal& x : fewer->ranked)
        for (const RankedMetal& y : a->ranked)
            if (x.metal == y.metal) CHECK((x.place.low90 == y.place.low90 && x.place.high90 == y.place.high90));
    CHECK(a->ranked[0].place.p_first == b->ranked[0].place.p_first);
    all.seed = 2;
    CHECK(rank(c, all)->ranked[0].place.low90 != a->ranked[0].place.low90);
}

TEST_CASE("conditions leave out, with the condition as the reason") {
    const Catalogue c = small_catalogue();
    RankRequest r = by_formula("conductivity");
    r.goal.where = {"liquidus > 760 K"};
    const auto result = rank(c, r);
    REQUIRE(result->excluded.size() == 1);
    CHECK(result->excluded[0].metal->slug == "ab");
    CHECK(result->excluded[0].reason.find("liquidus > 760 K") != std::string::npos);
    r.goal.where = {"liquidus >"};
    CHECK(rank(c, r).problem().kind == Problem::Kind::unreadable);
}

TEST_CASE("a formula without a finite number for a metal makes it unrankable") {
    const Catalogue c = small_catalogue();
    const auto result = rank(c, by_formula("1 / (density - 8000 kg/m3)"));
    REQUIRE(result);
    REQUIRE(result->unrankable.size() == 1);
    CHECK(result->unrankable[0].metal->slug == "aa");
}

TEST_CASE("the interval of a product follows from the relative uncertainties") {
    // For a product of independent factors the relative uncertainties add in squares; 90 % is 1.645 standard
    // deviations.
    const Catalogue c = small_catalogue();
    RankRequest request = by_formula("conductivity * density");
    request.samples = 20000;
    const auto result = rank(c, request);
    const RankedMetal& aa = *std::find_if(result->ranked.begin(), result->ranked.end(),
                                          [](const RankedMetal& m) { return m.metal->slug == "aa"; });
    double variance = 0;
    for (const RankInput& i : aa.inputs) variance += std::pow(i.value.standard_uncertainty_si / i.value.value_si, 2);
    CHECK(std::log(aa.place.high90 / aa.place.low90) == Approx(2 * 1.6449 * std::sqrt(variance)).epsilon(0.03));
}

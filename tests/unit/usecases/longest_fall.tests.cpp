// A whole computation as a goal: the fall of one magnet through a tube of each metal.
#include "questions/drop/drop.hpp"
#include "questions/rank/rank.hpp"
#include "questions/rank/versus.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

SetupWords usual_setup() {
    SetupWords s;
    s.magnet = "cylinder:12mmx10mm";
    s.grade = "N42";
    s.tube = "13mm:17mm:0.5m";
    return s;
}

RankRequest longest_fall(Holding holding = Holding::size) {
    RankRequest r;
    r.goal.goal = "longest-fall";
    r.goal.holding = holding;
    r.goal.fall.setup = usual_setup();
    if (holding == Holding::mass) r.goal.fall.mass = "300g";
    if (holding == Holding::budget) r.goal.fall.budget = "20USD";
    r.from = {"copper", "aluminium", "lead", "silver", "iron", "niobium"};
    r.samples = 300;
    return r;
}

const RankedMetal& row(const RankResult& r, const std::string& slug) {
    const auto found =
        std::find_if(r.ranked.begin(), r.ranked.end(), [&](const RankedMetal& m) { return m.metal->slug == slug; });
    REQUIRE(found != r.ranked.end());
    return *found;
}

} // namespace

TEST_CASE("longest fall of equal size: each metal's interval is that of drop") {
    const RankResult r = *rank(real_catalogue(), longest_fall());
    for (const char* slug : {"copper", "lead"}) {
        DropRequest request;
        request.setup = usual_setup();
        request.metal = slug;
        request.samples = 300;
        const DropResult alone = *drop(real_catalogue(), request);
        CHECK(row(r, slug).place.low90 == Approx(alone.fall_time_low90_s).epsilon(1e-9));
        CHECK(row(r, slug).place.high90 == Approx(alone.fall_time_high90_s).epsilon(1e-9));
        CHECK(row(r, slug).tube->wall_m == Approx(2e-3));
        CHECK(row(r, slug).tube->mass_kg == Approx(alone.tube_mass_kg));
    }
    CHECK(r.ranked.front().metal->slug == "silver"); // best conductor
    REQUIRE(r.excluded.size() == 2);
    CHECK(r.excluded[0].reason.find("ferromagnetic") != std::string::npos);
}

TEST_CASE("law: of equal mass every tube has that mass, of equal budget every tube costs that") {
    const RankResult mass = *rank(real_catalogue(), longest_fall(Holding::mass)),
                     budget = *rank(real_catalogue(), longest_fall(Holding::budget));
    for (const RankedMetal& m : mass.ranked) CHECK(m.tube->mass_kg == Approx(0.3));
    for (const RankedMetal& m : budget.ranked) CHECK(m.tube->cost_usd == Approx(20));
    CHECK(budget.ranked.front().metal->slug == "copper"); // much aluminium for the money, but far from the magnet
    CHECK(row(budget, "silver").tube->wall_m < 1e-4);
    CHECK(budget.order_by_price_form.size() == 3);
    CHECK(mass.order_by_price_form.empty());
}

TEST_CASE("a metal cooled below its superconducting temperature is left out with the reason") {
    RankRequest r = longest_fall();
    r.goal.include_unusual = true;
    r.from = {"lead", "copper"};
    r.conditions.temperature_K = 5;
    const RankResult result = *rank(real_catalogue(), r);
    REQUIRE(result.excluded.size() == 1);
    CHECK(result.excluded[0].reason.find("superconduct") != std::string::npos);
}

TEST_CASE("a fall without a magnet, a holding without an amount and an amount without its holding are refused") {
    RankRequest r = longest_fall();
    const auto refused = [&] {
        const auto result = rank(real_catalogue(), r);
        return !result && result.problem().kind == Problem::Kind::unreadable;
    };
    r.goal.fall.setup.magnet.clear();
    CHECK(refused());
    r = longest_fall(Holding::budget);
    r.goal.fall.budget.clear();
    CHECK(refused());
    r.goal.fall.budget = "20kg";
    CHECK(refused());
    r = longest_fall();
    r.goal.fall.mass = "1kg";
    CHECK(refused());
    r = longest_fall();
    r.goal.goal = "strongest-brake";
    CHECK(refused());
    r.goal.fall = {};
    r.goal.where = {"fall_time > 2 s"};
    CHECK(refused());
}

TEST_CASE("a slit tube is ranked where drop answers, and can't be ranked where drop refuses") {
    RankRequest r = longest_fall();
    r.from = {"copper", "lead"};
    r.goal.fall.setup.slits = "1";
    DropRequest request;
    request.setup = r.goal.fall.setup;
    request.metal = "copper";
    const RankResult slow = *rank(real_catalogue(), r);
    CHECK(row(slow, "copper").place.median == Approx(drop(real_catalogue(), request)->fall.time_s).epsilon(0.01));
    request.setup.magnet_mass = r.goal.fall.setup.magnet_mass = "1.5kg"; // where the induced field matters
    const RankResult fast = *rank(real_catalogue(), r);
    CHECK(fast.ranked.empty());
    REQUIRE(fast.unrankable.size() == 2);
    CHECK(fast.unrankable[0].reason == drop(real_catalogue(), request).problem().text);
    const Result<VersusResult> versus_fast = versus(real_catalogue(), {"copper", "lead", r.goal, {}, 100, 1});
    CHECK((!versus_fast && versus_fast.problem().kind == Problem::Kind::refused));
}

TEST_CASE("with slits and a budget: the wall that the money buys must be thin") {
    RankRequest r = longest_fall(Holding::budget);
    r.goal.fall.budget = "3USD";
    r.goal.fall.setup.slits = "1";
    r.from = {"copper", "aluminium-1350", "silver"};
    const RankResult slit = *rank(real_catalogue(), r);
    CHECK(slit.ranked.size() == 2);
    const RankedMetal& copper = row(slit, "copper");
    DropRequest request;
    request.setup = r.goal.fall.setup;
    request.setup.tube = "13mm:" + std::to_string(13 + 2e3 * copper.tube->wall_m) + "mm:0.5m";
    request.metal = "copper";
    CHECK(copper.place.median == Approx(drop(real_catalogue(), request)->fall.time_s).epsilon(0.02));
    REQUIRE(slit.unrankable.size() == 1); // much wall for the money
    CHECK(slit.unrankable[0].metal->slug == "aluminium-1350");
    CHECK(slit.unrankable[0].reason.find("thin walls") != std::string::npos);
}

TEST_CASE("a fall enters a formula as any other number does") {
    RankRequest r = longest_fall();
    r.goal.goal.clear();
    r.goal.formula = "fall_time / price";
    r.goal.include_unusual = true;
    const RankResult result = *rank(real_catalogue(), r);
    const RankedMetal& copper = row(result, "copper");
    CHECK(result.unit == "kg s USD^-1");
    CHECK(copper.inputs.size() == 2);
    const RankResult falls = *rank(real_catalogue(), longest_fall());
    CHECK(copper.place.median ==
          Approx(row(falls, "copper").place.median / copper.inputs[0].value.value_si).epsilon(0.02));
}

TEST_CASE("versus tells a fall in seconds") {
    VersusRequest v{"copper", "aluminium", longest_fall().goal, {}, 200, 1};
    const VersusResult r = *versus(real_catalogue(), v);
    CHECK(r.better.metal->slug == "copper");
    CHECK(r.deciding == "resistivity");
    CHECK(r.sentence.find(" s against ") != std::string::npos);
    v.b = "iron";
    CHECK(versus(real_catalogue(), v).problem().kind == Problem::Kind::refused);
}

TEST_CASE("over a range of temperatures the worst counts, and who isn't cited over all of it is named") {
    RankRequest r;
    r.goal.formula = "conductivity";
    r.from = {"copper", "brass-cartridge"};
    r.samples = 100;
    r.conditions.temperature_K = 77;
    r.to_K = 300;
    const RankResult over = *rank(real_catalogue(), r);
    r.conditions.temperature_K = 300;
    r.to_K = no_number;
    const RankResult warm = *rank(real_catalogue(), r);
    CHECK(row(over, "copper").place.median == Approx(row(warm, "copper").place.median)); // worst where it is warmest
    const bool listed = std::any_of(over.unrankable.begin(), over.unrankable.end(), [](const LeftOut& l) {
        return l.reason.find("outside the cited range") != std::string::npos;
    });
    CHECK((listed || over.ranked.size() == 2));
}

// What castings reached comes back into the next plan: contraction by size and mould, yield, lots.
#include "questions/workshop/own_pour.hpp"

#include "answers/pour/pour_report.hpp"
#include "core/laws/traces.hpp"
#include "questions/pour/part_words.hpp"
#include "questions/pour/pour_in_workshop.hpp"
#include "questions/say/casting_words.hpp"
#include "questions/workshop/trial.hpp"
#include "questions/workshop/with_workshop.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;
using Catch::Matchers::Contains;

namespace {

Trial cast_tube(const std::string& process, const std::string& part, const std::string& pattern) {
    Trial t;
    t.type = TrialType::casting;
    t.metal = "copper";
    t.process = process;
    t.mass = "280 g";
    t.part = part;
    t.pattern = pattern;
    return t;
}

PourRequest pour_of(const std::string& process = "shell") {
    PourRequest r;
    r.metal = "copper";
    r.process = process;
    const std::string part = "tube:12mm:16mm:100mm";
    const casting::Shape shape = *part_from(part)->shape;
    r.pieces = {{part, shape, *casting::measured(shape)}};
    return r;
}

PourResult plan_of(const PourRequest& request, const WorkshopData& own) {
    const Result<PourResult> plan =
        pour_in_workshop(testing::real_catalogue(), with_own_pour(testing::real_catalogue(), request, own), own);
    INFO((plan ? "" : plan.problem().text));
    REQUIRE(plan);
    return *plan;
}

std::string sheet_of(const PourResult& plan) {
    return text_of(plan, testing::real_catalogue(), UnitSystem::shown);
}

} // namespace

TEST_CASE("the pattern goes by the contraction that own castings reached in this mould") {
    // Tubes 24 mm bore, 30 mm outside, 200 mm long from patterns 0.6, 2.0 and 1.8 % larger.
    WorkshopData own;
    for (int i = 0; i < 3; ++i)
        own.trials.push_back(cast_tube("shell", "tube:24mm:30mm:200mm", "tube:24.144mm:30.6mm:203.6mm"));
    own.trials.push_back(cast_tube("sand", "tube:24mm:30mm:200mm", "tube:24mm:30mm:200mm"));
    const PourResult plan = plan_of(pour_of(), own);
    const auto& sizes = plan.patterns.front().dimensions;
    REQUIRE(sizes.size() == 3);
    CHECK(sizes[0].pattern_m == Approx(12e-3 * 1.006));
    CHECK(sizes[1].pattern_m == Approx(16e-3 * 1.020));
    CHECK(sizes[2].pattern_m == Approx(100e-3 * 1.018));
    for (const casting::DimensionPlan& d : sizes) {
        CHECK(d.own == 3);
        CHECK(d.low_m < d.pattern_m);
        CHECK(d.high_m > d.pattern_m);
    }
    CHECK(sizes[2].high_m - sizes[2].low_m < 0.5 * 100e-3 * (plan.span.high - plan.span.low));
    CHECK_THAT(sheet_of(plan), Contains("your own castings in this mould contracted"));
    CHECK_THAT(sheet_of(plan), Contains("--own-trials off"));
    PourRequest off = pour_of();
    off.own_trials = false;
    CHECK(plan_of(off, own).patterns.front().dimensions[0].pattern_m ==
          plan_of(pour_of(), {}).patterns.front().dimensions[0].pattern_m);
}

TEST_CASE("a bore goes by bores alone, another size by what is no bore") {
    WorkshopData own;
    own.trials = {cast_tube("shell", "bar:20mm:200mm", "bar:20.4mm:203.6mm")};
    const auto& sizes = plan_of(pour_of(), own).patterns.front().dimensions;
    CHECK(sizes[0].own == 0);
    CHECK(sizes[1].own > 0);
    CHECK(sizes[2].own > 0);
}

TEST_CASE("own yield is taken where it asks for more metal, and says so") {
    WorkshopData own;
    own.trials = {cast_tube("shell", "", "")};
    own.trials[0].charge_kg = 1.4; // 280 g of it came out
    own.trials[0].mass_in_water = "247.5 g";
    const PourResult plan = plan_of(pour_of(), own);
    REQUIRE(plan.own_yield);
    CHECK(plan.own_yield->mean == Approx(0.2));
    CHECK(plan.own_yield->taken);
    CHECK(plan.charge.charge_kg == Approx(plan.cast_mass_kg / 0.2));
    CHECK_THAT(sheet_of(plan), Contains("your own yield"));
    own.trials[0].charge_kg = 0.281;
    const PourResult lean = plan_of(pour_of(), own);
    CHECK_FALSE(lean.own_yield->taken);
    CHECK(lean.charge.charge_kg == lean.own_yield->planned_kg);
}

TEST_CASE("the shelf says what is short, and what its lots cost") {
    WorkshopData own;
    StockLot lot{1, "shelf-1", "copper", "", "", 0.1, OwnPrice{}};
    lot.price->metal = "copper";
    lot.price->written = "20 USD/kg";
    lot.price->per_kg = 20;
    lot.price->currency = "USD";
    lot.price->date = "2026-10-01";
    own.stock = {lot};
    PourRequest two = pour_of();
    two.count = 2;
    const PourResult plan = plan_of(two, own);
    REQUIRE(plan.shelf);
    CHECK(plan.shelf->need_kg == Approx(2 * plan.charge.charge_kg));
    CHECK(plan.shelf->short_kg() == Approx(2 * plan.charge.charge_kg - 0.1));
    CHECK(plan.money.value == Approx(20 * plan.charge.charge_kg));
    CHECK_THAT(sheet_of(plan), Contains("short by"));
    CHECK_THAT(sheet_of(plan), Contains("what your lots cost: shelf-1"));
    two.own_stock = false;
    const PourResult off = plan_of(two, own);
    CHECK_FALSE(off.shelf);
    CHECK(off.money.value != plan.money.value);
    own.stock[0].metal = "tin";
    CHECK_THAT(sheet_of(plan_of(pour_of(), own)), Contains("no lot of copper"));
}

TEST_CASE("a weighing in water tells pores that a calliper can't, and questions what can't be") {
    Trial t;
    t.type = TrialType::weighing;
    t.metal = "copper";
    t.mass = "180.00 g";
    t.part = "tube:24mm:30mm:80mm";
    std::vector<std::string> remarks;
    const Catalogue& c = testing::real_catalogue();
    const Result<Weighed> by_size = weighed_from(c, t, remarks);
    REQUIRE(by_size);
    CHECK_FALSE(by_size->in_water);
    t.mass_in_water = "159.50 g"; // 8.77 g/cm3
    t.water_K = 293.15;
    const Result<Weighed> in_water = weighed_from(c, t, remarks);
    REQUIRE(in_water);
    CHECK(in_water->in_water);
    CHECK(in_water->density_kg_m3 == Approx(8757).epsilon(0.002));
    CHECK(*in_water->porosity == Approx(0.022).margin(0.004));
    CHECK(in_water->porosity_uncertainty < 0.3 * by_size->porosity_uncertainty);
    CHECK(remarks.empty());
    t.mass_in_water = "162.00 g"; // 10 g/cm3
    REQUIRE(weighed_from(c, t, remarks));
    CHECK(std::any_of(remarks.begin(), remarks.end(),
                      [](const std::string& r) { return r.find("denser than copper can be") == 0; }));
    t.mass_in_water = "180.10 g";
    CHECK_FALSE(weighed_from(c, t, remarks));
}

TEST_CASE("a drop is predicted for a casting of its metal, a stated condition overrides") {
    Trial t;
    CHECK(conditions_of(t).casting);
    CHECK_FALSE(conditions_of(t).casting->own_trials);
    t.condition = "as-cast";
    CHECK(conditions_of(t).casting);
    t.condition = "annealed";
    CHECK_FALSE(conditions_of(t).casting);
}

TEST_CASE("weighed castings narrow the pores of the next one") {
    const auto weighed = [](const char* in_air, const char* in_water) {
        Trial t;
        t.type = TrialType::weighing;
        t.metal = "copper";
        t.mass = in_air;
        t.mass_in_water = in_water;
        t.water_K = 293.15;
        return t;
    };
    const CastingState state;
    const Catalogue& reference = testing::real_catalogue();
    const PorosityRange common = porosity_of(reference, *reference.metal("copper"), state).range;
    WorkshopData data;
    data.trials = {weighed("180.00 g", "159.84 g"), weighed("200.00 g", "177.62 g"), weighed("150.00 g", "133.18 g")};
    const Catalogue c = with_workshop(reference, data).catalogue;
    const CastPorosity own = porosity_of(c, *c.metal("copper"), state);
    CHECK(own.practice->citation.locator == "your 3 weighings");
    CHECK(own.range.high - own.range.low < 0.8 * (common.high - common.low));
    CHECK(own.range.high < common.high);
    CHECK_THAT(casting_words(c, *c.metal("copper"), state), Contains("your 3 weighings; --own-trials off"));
    CastingState off;
    off.own_trials = false;
    CHECK(porosity_of(c, *c.metal("copper"), off).range == common);
    CHECK(porosity_of(c, *c.metal("tin"), state).range == porosity_of(reference, *reference.metal("tin"), state).range);
    data.trials = {weighed("180.00 g", "162.00 g")}; // denser than copper can be: questioned, and taken for nothing
    const Catalogue questioned = with_workshop(reference, data).catalogue;
    CHECK(porosity_of(questioned, *questioned.metal("copper"), state).range == common);
    CHECK(with_workshop(reference, data, OwnCastingsToo::no).catalogue.practices.size() == reference.practices.size());
}

#include "support/small_catalogue.hpp"

#include "questions/pour/part_words.hpp"
#include "questions/pour/pour.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::casting;

namespace {

PourRequest request(const std::string& metal, const std::string& part = "tube:12mm:16mm:100mm",
                    const std::string& process = "shell") {
    PourRequest r;
    r.metal = metal;
    const casting::Shape shape = *part_from(part)->shape;
    r.pieces = {{part, shape, *measured(shape)}};
    r.process = process;
    return r;
}

Problem problem_of(const PourRequest& r) {
    const Result<PourResult> plan = pour(testing::real_catalogue(), r);
    REQUIRE(!plan);
    return plan.problem();
}

PourResult plan_of(const PourRequest& r) {
    Result<PourResult> plan = pour(testing::real_catalogue(), r);
    INFO((plan ? "" : plan.problem().text));
    REQUIRE(plan);
    return *plan;
}

bool says(const std::vector<std::string>& remarks, const std::string& piece) {
    return std::any_of(remarks.begin(), remarks.end(),
                       [&](const std::string& r) { return r.find(piece) != std::string::npos; });
}

} // namespace

TEST_CASE("what must not be melted is refused with the agency's reason") {
    for (const char* slug : {"beryllium", "copper-beryllium", "cadmium", "copper-cadmium", "woods-metal", "mercury",
                             "lithium", "sodium", "calcium", "titanium", "tungsten", "zirconium"}) {
        INFO(slug);
        PourRequest r = request(slug);
        r.acknowledge_hazard = true; // no acknowledgement helps
        CHECK(problem_of(r).kind == Problem::Kind::refused);
    }
    CHECK(problem_of(request("copper-beryllium")).text.find("OSHA") != std::string::npos);
    CHECK(problem_of(request("cadmium")).text.find("Occupational Safety and Health Administration") !=
          std::string::npos);
    CHECK(problem_of(request("mercury")).text.find("Environmental Protection Agency") != std::string::npos);
    CHECK(problem_of(request("sodium")).text.find("Department of Transportation") != std::string::npos);
}

TEST_CASE("lead and magnesium need an acknowledgement") {
    for (const char* slug : {"lead", "magnesium", "magnesium-az91d", "bronze-leaded-tin", "solder-60-40"}) {
        INFO(slug);
        PourRequest r = request(slug, "bar:20mmx50mm", "sand");
        CHECK(problem_of(r).kind == Problem::Kind::refused);
        CHECK(problem_of(r).text.find("--acknowledge-hazard") != std::string::npos);
        r.acknowledge_hazard = true;
        const Result<PourResult> plan = pour(testing::real_catalogue(), r);
        INFO((plan ? "" : plan.problem().text));
        CHECK((plan || plan.problem().kind != Problem::Kind::refused));
    }
}

TEST_CASE("cautions come first and name their source, and without limits a caution says so") {
    const PourResult plan = plan_of(request("brass-cartridge"));
    REQUIRE(plan.cautions.size() > 4);
    CHECK(plan.cautions.front().text.find("Water") != std::string::npos);
    for (const Warning& w : plan.cautions) {
        CHECK(testing::real_catalogue().reference(w.citation.source));
        CHECK(!w.citation.locator.empty());
    }
    CHECK(says(plan.remarks, "No limits of your workshop"));
    PourRequest r = request("brass-cartridge");
    r.workshop.furnace_maximum_K = 1500;
    CHECK(!says(plan_of(r).remarks, "No limits of your workshop"));
}

TEST_CASE("limits of the workshop refuse with the reason") {
    PourRequest r = request("copper");
    r.workshop.furnace_maximum_K = 1423.15; // 1150 degC
    CHECK(problem_of(r).kind == Problem::Kind::refused);
    CHECK(problem_of(r).text.find("the furnace reaches 1150 degC") != std::string::npos);
    r = request("copper");
    r.workshop.crucible_volume_m3 = 5e-6;
    CHECK(problem_of(r).text.find("can't be poured from two heats") != std::string::npos);
    r.workshop.crucible_volume_m3 = 100e-6;
    r.count = 12;
    CHECK(plan_of(r).limits.castings_per_heat == 5);
    CHECK(plan_of(r).heats == 3);
    r = request("stainless-304", "bar:20mmx50mm");
    r.workshop.crucible_material = "graphite";
    CHECK(problem_of(r).text.find("dissolve carbon") != std::string::npos);
    r = request("aluminium-a356-cast");
    r.workshop.crucible_material = "fused silica";
    CHECK(problem_of(r).text.find("reduces silica") != std::string::npos);
    r = request("copper");
    r.mould_K = 1273.15;
    r.workshop.mould_material = "fused silica";
    CHECK(problem_of(r).text.find("preheating to 899 degC") != std::string::npos);
    r.workshop.mould_material = "alumino-silicate";
    CHECK(says(plan_of(r).remarks, "If the mould is of fused silica"));
    r.workshop.mould_maximum_K = 1173.15;
    CHECK(problem_of(r).text.find("yours stands 900 degC") != std::string::npos);
    CHECK(says(plan_of(request("copper", "bar:100mmx600mm", "sand")).remarks, "for one person"));
}

TEST_CASE("numbers that can't be are refused by name") {
    const auto fault = [](auto change) {
        PourRequest r = request("copper");
        change(r);
        const Problem p = problem_of(r);
        CHECK(p.kind == Problem::Kind::unreadable);
        return p.text;
    };
    CHECK(fault([](PourRequest& r) { r.pieces.clear(); }).find("no part") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.superheat_K = -1; }).find("superheat") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.melt_loss = 0.9; }).find("melt loss") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.yield = 0.0; }).find("yield") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.heel_kg = -1; }).find("heel") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.gating_kg = -1; }).find("gating") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.stock_m = -0.001; }).find("stock") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.power_W = 0.0; }).find("power") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.efficiency = 1.5; }).find("efficiency") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.power_W = no_number; }).find("power") != std::string::npos);
    CHECK(fault([](PourRequest& r) { r.start_K = 5000; }).find("start") != std::string::npos);
    CHECK(pour(testing::real_catalogue(), request("unobtainium")).problem().kind == Problem::Kind::unknown);
}

TEST_CASE("plans of the usual metals trace every number to a source") {
    for (const char* slug : {"copper", "sterling-silver", "bronze-tin-cast", "aluminium-a356-cast", "za-8", "tin"}) {
        INFO(slug);
        const PourResult p = plan_of(request(slug, "tube:12mm:16mm:100mm", "sand"));
        REQUIRE(p.contraction);
        CHECK(p.contraction->strain.value_si > 0.003);
        CHECK(!p.contraction->strain.sources.empty());
        CHECK(!p.allowance.sources.empty());
        CHECK(p.allowance.high >= p.allowance.low);
        CHECK(!p.allowance.notes.empty());
        for (const Traced* t : {&p.density, &p.melt_density, &p.heat.pour, &p.melt_loss, &p.gating, &p.feeding.share})
            CHECK(!t->sources.empty());
        REQUIRE(p.melt_heat);
        CHECK(!p.melt_heat->fusion.sources.empty());
        REQUIRE(p.feeding.feeder);
        REQUIRE(p.money.price);
        CHECK(p.money.value > 0);
        CHECK(!p.money.as_of.empty());
        CHECK(p.heat.superheat_K > 0);
    }
}

TEST_CASE("a bore that may not clear is said, and machining or a wider bore clears it") {
    PourRequest r = request("copper");
    r.clear_m = 0.012;
    CHECK(says(plan_of(r).remarks, "may come out at 11.61 mm and not clear 12 mm"));
    r.clear_m = 0.011;
    CHECK(!says(plan_of(r).remarks, "not clear"));
    r = request("copper", "bar:20mmx50mm");
    r.clear_m = 0.011;
    CHECK(says(plan_of(r).remarks, "no bore"));
}

TEST_CASE("superheat by section: thin hot, heavy cool, stated as stated") {
    const double thin = plan_of(request("copper", "tube:12mm:16mm:100mm")).heat.pour.value_si;
    const double heavy = plan_of(request("copper", "bar:40mmx50mm")).heat.pour.value_si;
    CHECK(thin == Approx(1230 + 273.15)); // common practice: 1150 to 1230 degC
    CHECK(heavy == Approx(1150 + 273.15));
    PourRequest r = request("copper");
    r.superheat_K = 80;
    CHECK(plan_of(r).heat.pour.value_si == Approx(1357.77 + 80));
}

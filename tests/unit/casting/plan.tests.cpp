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
    r.workshop.furnace_maximum_K = 1373.15; // 1100 degC, less than the least superheat
    CHECK(problem_of(r).kind == Problem::Kind::refused);
    CHECK(problem_of(r).text.find("the furnace reaches 1100 degC") != std::string::npos);
    r = request("copper");
    r.workshop.crucible_volume_m3 = 5e-6;
    CHECK(problem_of(r).text.find("can't be poured from two heats") != std::string::npos);
    r.workshop.crucible_volume_m3 = 100e-6;
    r.count = 12;
    const PourResult many = plan_of(r);
    const auto fit = static_cast<std::size_t>(100e-6 / many.melt_volume_m3);
    CHECK(many.limits.castings_per_heat == fit);
    CHECK(fit > 1);
    CHECK(many.heats == (12 + fit - 1) / fit);
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
        CHECK(p.feeding.too_thin); // 2 mm of wall
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

TEST_CASE("pour temperature: one source, by section, inside the window") {
    const PourResult thin = plan_of(request("copper", "tube:12mm:16mm:100mm"));
    const PourResult heavy = plan_of(request("copper", "bar:40mmx50mm"));
    for (const PourResult* p : {&thin, &heavy}) {
        CHECK(p->heat.pour.value_si >= 1150 + 273.15 - 1e-6); // common practice: 1150 to 1230 degC
        CHECK(p->heat.pour.value_si <= 1230 + 273.15 + 1e-6);
    }
    CHECK(thin.heat.pour.value_si > heavy.heat.pour.value_si + 30);
    PourRequest r = request("copper");
    r.superheat_K = 80;
    CHECK(plan_of(r).heat.pour.value_si == Approx(1357.77 + 80));
    // Silicon bronze C87300, ingot maker's sheet: light 2000 to 2150 degF, heavy 1850 to 1950 degF. It once came to 11
    // K of superheat by mixing the ends of several sources.
    const PourResult block = plan_of(request("bronze-silicon-cast", "plate:50mmx50mmx50mm"));
    CHECK(block.heat.section == "heavy");
    CHECK(block.heat.pour.value_si > 1010 + 273.15 - 0.5);
    CHECK(block.heat.pour.value_si < 1066 + 273.15 + 0.5);
    const PourResult wall = plan_of(request("bronze-silicon-cast", "tube:22mm:28mm:400mm"));
    CHECK(wall.heat.pour.value_si > 1093 + 273.15 - 0.5);
    CHECK(wall.heat.pour.value_si < 1177 + 273.15 + 0.5);
}

TEST_CASE("zinc bounds the pour of high brasses") {
    const PourResult p = plan_of(request("bronze-manganese-cast", "tube:22mm:28mm:400mm"));
    CHECK(p.heat.zinc_atm < 0.5); // once poured at 1100 degC, where zinc stands at about an atmosphere
    CHECK(p.heat.most_why.find("zinc") != std::string::npos);
    CHECK(std::isnan(plan_of(request("copper")).heat.zinc_atm));
}

TEST_CASE("no thick section is poured with a bare 10 K, no zinc with 180") {
    for (const char* slug : {"za-12", "zinc", "brass-red", "aluminium-6061", "aluminium"}) {
        if (!testing::real_catalogue().metal(slug)) continue;
        INFO(slug);
        CHECK(plan_of(request(slug, "plate:50mmx50mmx50mm")).heat.superheat_K >= 20);
    }
    CHECK(plan_of(request("zinc", "tube:22mm:28mm:400mm")).heat.superheat_K < 170);
}

TEST_CASE("gypsum refuses the heat of copper, another investment does not") {
    PourRequest r = request("copper", "plate:50mmx50mmx50mm", "plaster");
    CHECK(problem_of(r).text.find("gypsum") != std::string::npos);
    r.workshop.mould_material = "phosphate-bonded investment";
    const PourResult p = plan_of(r);
    CHECK(p.mould_K <= 788 + 273.15 + 0.5); // never above what burn-out allows
    REQUIRE(p.freezing);
    CHECK(p.freezing->time_s.value_si < 3600); // once said to be 4.3 hours
    CHECK(plan_of(request("bronze-silicon-cast", "plate:50mmx50mmx50mm", "plaster")).freezing);
}

TEST_CASE("a thin long wall gets gates, a block gets a feeder, both say how far a feeder reaches") {
    const PourResult tube = plan_of(request("copper", "tube:22mm:28mm:400mm"));
    CHECK(tube.feeding.too_thin);
    CHECK(tube.feeder_kg == 0);
    CHECK(tube.feeding.gate_spacing_m == Approx(0.06));
    CHECK(tube.fill.gating.gates == 7);
    CHECK(tube.feeding.distance_m == Approx(4.5 * 0.003));
    CHECK(says(tube.remarks, "cast round a core"));
    const PourResult cube = plan_of(request("copper", "plate:50mmx50mmx50mm"));
    REQUIRE(cube.feeding.feeder);
    CHECK(!cube.feeding.too_thin);
    // Once 72 mm wide and 2.63 kg on a casting of 1.12 kg without a word on the yield.
    CHECK(cube.feeding.feeder->chosen().diameter_m == Approx(0.062).margin(0.002));
    CHECK(cube.feeding.feeder_freezing_s > cube.freezing->time_s.value_si);
    PourRequest r = request("copper", "plate:50mmx50mmx50mm");
    r.gating_kg = 1;
    CHECK(says(plan_of(r).remarks, "below the usual 40 to 70 %"));
    r.gating_kg.reset();
    r.no_feeder = true;
    CHECK(says(plan_of(r).remarks, "cm3 will be missing"));
}

TEST_CASE("melting loses what the metal can lose") {
    // A jeweller loses 0.1 to 0.5 % of his gold; 5 % of it was once charged (a table for a gas crucible furnace).
    CHECK(plan_of(request("gold-18k-yellow", "bar:10mmx20mm")).melt_loss.value_si < 0.006);
    CHECK(plan_of(request("sterling-silver", "bar:10mmx20mm")).melt_loss.value_si < 0.011);
    const PourResult brass = plan_of(request("brass-cartridge", "bar:20mmx50mm"));
    REQUIRE(!brass.element_losses.empty());
    CHECK(brass.element_losses.front().element == "Zn");
    CHECK(brass.element_losses.front().high_kg > brass.element_losses.front().low_kg);
}

TEST_CASE("grey iron gets its sheet") {
    PourRequest r = request("iron-grey", "bar:20mmx50mm", "sand");
    const PourResult p = plan_of(r);
    CHECK(p.charge.charge_kg > p.part_mass_kg);
}

TEST_CASE("the pattern shows where the right one may lie, and who decides") {
    const PourResult p = plan_of(request("copper", "tube:22mm:28mm:400mm"));
    const DimensionPlan& length = p.patterns.front().dimensions.back();
    CHECK(length.name == "length");
    CHECK(length.low_m == Approx(0.404).margin(0.0005));
    CHECK(length.high_m > length.pattern_m);
    CHECK(p.span.decides.find("hold") != std::string::npos);
    for (const char* slug : {"pewter", "solder-sac305", "bronze-bell-metal", "gold-18k-yellow"}) {
        if (!testing::real_catalogue().metal(slug)) continue;
        INFO(slug);
        const Result<PourResult> plan = pour(testing::real_catalogue(), request(slug, "bar:20mmx50mm"));
        REQUIRE(plan);
        CHECK(plan->contraction);
    }
}

TEST_CASE("the pattern lies within its span also where the mould grows") {
    // Once 405.3 mm for gold in a hot flask, where the sheet itself called 399 to 401 mm right.
    for (const char* part : {"tube:22mm:28mm:400mm", "plate:50mmx50mmx50mm"}) {
        const PourResult p = plan_of(request("gold-18k-yellow", part, "plaster"));
        CHECK(p.mould_growth.any());
        CHECK(p.scale == Approx(1 + p.span.middle()));
        for (const DimensionPlan& d : p.patterns.front().dimensions) {
            CHECK(d.low_m < d.pattern_m);
            CHECK(d.pattern_m < d.high_m);
            CHECK(d.high_m >= Approx(d.cast_m * (1 + p.allowance.high))); // jewellers print 1 to 2 % from wax to metal
        }
    }
    casting::Range printed;
    printed.low_si = 0.012;
    printed.high_si = 0.014;
    printed.sources.resize(1);
    CHECK(casting::mould_growth(printed, 873).low == 0.012);
    CHECK(casting::mould_growth(printed, 700).low == 0); // perhaps
    CHECK(casting::mould_growth(printed, 700).high == 0.014);
    CHECK_FALSE(casting::mould_growth(printed, 400).any());
    CHECK_FALSE(casting::mould_growth({}, 873).any());
}

TEST_CASE("no hotter than the mould asks for") {
    // Gunmetal in a shell at 732 degC was once poured at 1211 degC, 212 K over its liquidus, with 1029 degC enough.
    const PourResult p = plan_of(request("bronze-gunmetal-88-10-2", "tube:22mm:28mm:400mm"));
    CHECK(p.heat.pour.value_si <= p.heat.least_K + 100.1);
    CHECK(p.heat.pour.value_si > p.heat.least_K);
    const PourResult cold = plan_of(request("aluminium-a356-cast", "tube:22mm:28mm:400mm", "sand"));
    CHECK(cold.heat.pour.value_si > 740 + 273.15); // a cold mould asks for the hot end
}

TEST_CASE("a core floats, a long one bends, a casting shrinks onto a metal one, and a flat wall is better on edge") {
    const auto cautions = [](const char* process) {
        return plan_of(request("za-12", "tube:22mm:28mm:400mm", process)).remarks;
    };
    // pi/4 22^2 400 mm3 = 152 cm3 by 5.44 - 1.6 g/cm3.
    CHECK(says(cautions("sand"), "lifts its core with 0.58 kg"));
    CHECK(says(cautions("sand"), "18 bores long"));
    CHECK(says(cautions("permanent"), "shrinks onto a metal core"));
    CHECK(!says(plan_of(request("za-12", "bar:20mmx50mm", "sand")).remarks, "core"));
    CHECK(says(plan_of(request("za-12", "plate:200mmx100mmx3mm", "sand")).remarks, "standing on edge"));
    CHECK(!says(plan_of(request("za-12", "plate:200mmx3mmx100mm", "sand")).remarks, "standing on edge"));
}

TEST_CASE("own castings narrow the span of the pattern") {
    const casting::PatternSpan printed{0.010, 0.0224, "print"};
    CHECK(casting::span_after_trials(printed, {}).low == printed.low);
    // Two castings with 0.1 % each: the mean +- 1.6449 x 0.1 / sqrt 2 %.
    const auto own = casting::span_after_trials(printed, {{0.0136, 0.001}, {0.0143, 0.001}});
    CHECK(own.low == Approx(0.01395 - 1.6449 * 0.001 / std::sqrt(2.0)));
    CHECK(own.high == Approx(0.01395 + 1.6449 * 0.001 / std::sqrt(2.0)));
}

TEST_CASE("a printed sprue bends under pattern and wet shell as a cantilever does") {
    // 0.1 kg pattern, 1 kg dry shell wet 1.3 kg, 400 mm long, 7 mm round: 1.4 x 9.80665 x 0.2 x 32 / (pi 0.007^3).
    const Catalogue& c = testing::real_catalogue();
    const auto load = casting::sprue_load(c, *c.metal("copper"), 0.1, 1, 0.4, 0.007);
    CHECK(load.stress_Pa == Approx(1.4 * 9.80665 * 0.2 * 32 / (3.14159265 * 0.007 * 0.007 * 0.007)).epsilon(1e-6));
    CHECK(load.breaks());
    CHECK(!casting::sprue_load(c, *c.metal("copper"), 0.05, 0.3, 0.05, 0.02).breaks());
}

TEST_CASE("the charge holds the metal of its sprue") {
    const PourResult p = plan_of(request("copper", "tube:22mm:28mm:400mm"));
    CHECK(p.gating_by_plan);
    CHECK(p.charge.returns_kg == Approx(p.fill.gating.metal_m3 * p.density.value_si).epsilon(0.15));
    CHECK(p.charge.yield < 0.75);
    PourRequest stated = request("copper", "tube:22mm:28mm:400mm");
    stated.gating_kg = 0.1;
    CHECK(plan_of(stated).charge.returns_kg == Approx(0.1));
}

TEST_CASE("a first heat warms the furnace, a next one takes less") {
    const PourResult p = plan_of(request("copper")), cool = plan_of(request("tin"));
    CHECK(p.firing.propane_kg_low > p.firing.again_kg_low);
    // At least 15 kW for 8 minutes; tin wants no bright heat.
    CHECK(p.firing.propane_kg_low >= 15e3 * 480 / 47e6);
    CHECK(cool.firing.propane_kg_low < 0.3 * p.firing.propane_kg_low);
}

TEST_CASE("silicon dissolved in copper melts as copper does") {
    // No copper alloy takes more heat to melt than copper, 205 to 209 kJ/kg, by more than a tenth.
    const Catalogue& c = testing::real_catalogue();
    CHECK(latent_heat({c, *c.metal("bronze-silicon-cast"), Conditions{}})->value_si < 1.1 * 207e3);
}

TEST_CASE("a melt of brass contracts on its way to the liquidus though it is colder than copper melts") {
    // Slope of liquid copper 0.82 kg/m3/K (Assael): about 1 % in 100 K.
    const Catalogue& c = testing::real_catalogue();
    const Material brass{c, *c.metal("bronze-silicon-cast"), Conditions{}};
    const double low = liquid_density(brass, 1270)->value_si, high = liquid_density(brass, 1340)->value_si;
    CHECK(100 * (low - high) / low > 0.4);
    CHECK(100 * (low - high) / low < 1.2);
}

TEST_CASE("grey iron gives a sheet") {
    const PourResult p = plan_of(request("iron-grey", "bar:20mmx50mm", "sand"));
    CHECK(p.freezing);
    CHECK(p.melt_heat);
    CHECK(p.feeding.feeder);
}

// Laws that a plan must keep: mass and energy balance, scaling, units.
#include "support/small_catalogue.hpp"

#include "core/casting/charge.hpp"
#include "core/casting/contraction.hpp"
#include "core/casting/feeder.hpp"
#include "core/casting/heat.hpp"
#include "questions/pour/part_words.hpp"
#include "questions/pour/pour.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace pourbook;
using namespace pourbook::casting;

namespace {

/// "aa" with what a plan needs, in round figures.
Catalogue castable() {
    Catalogue c = testing::small_catalogue();
    Metal& aa = c.metals.front();
    const auto add = [&](Record r) { aa.records.push_back(std::move(r)); };
    const auto liquid = [&](Record r) {
        r.phase = Phase::liquid;
        add(std::move(r));
    };
    add(testing::series("specific_heat", {{200, 400}, {1000, 400}}));
    liquid(testing::series("specific_heat", {{1000, 500}, {2000, 500}}));
    liquid(testing::series("density", {{1000, 7500}, {2000, 7000}}));
    add(testing::single("latent_heat", 2e5));
    add(testing::single("solidification_contraction", 0.04));
    Record mean = testing::series("linear_expansion", {{393.15, 20e-6}, {1000, 20e-6}});
    mean.from_K = 293.15;
    add(std::move(mean));
    c.index();
    return c;
}

} // namespace

TEST_CASE("mass balance: charge = castings + returns + loss + heel (law)") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> any(0.0, 1.0);
    for (int i = 0; i < 500; ++i) {
        ChargeInputs in;
        in.casting_kg = 0.01 + 5 * any(random);
        in.gating_kg = any(random);
        in.feeder_kg = any(random);
        in.melt_loss = 0.3 * any(random);
        in.heel_kg = 0.2 * any(random);
        const Result<Charge> c = charge_for(in);
        REQUIRE(c);
        CHECK(c->charge_kg == Approx(in.casting_kg + c->returns_kg + c->lost_kg + in.heel_kg).epsilon(1e-12));
        CHECK(c->lost_kg == Approx(in.melt_loss * (c->charge_kg - in.heel_kg)).margin(1e-12));
        CHECK(c->yield <= 1);
        in.yield = c->yield; // the founder's rule with the same yield asks for the same metal
        CHECK(charge_for(in)->charge_kg == Approx(c->charge_kg).epsilon(1e-12));
    }
}

TEST_CASE("energy balance: parts add up, and the start only shifts the sensible heat (law)") {
    const Catalogue c = castable();
    const Material aa{c, c.metals.front(), Conditions{}};
    const Result<MeltHeat> h = heat_to_pour(aa, 300, 1100);
    REQUIRE(h);
    CHECK(h->total_J_kg == Approx(400.0 * 700 + 2e5 + 500.0 * 100).epsilon(1e-9));
    CHECK(h->total_J_kg == Approx(h->solid.value_si + h->fusion.value_si + h->melt.value_si));
    CHECK(heat_to_pour(aa, 500, 1100)->total_J_kg == Approx(h->total_J_kg - 400.0 * 200));
    CHECK(heat_to_pour(aa, 300, 1000)->melt.value_si == Approx(0).margin(1e-6));
    CHECK(!heat_to_pour(aa, 300, 900));
}

TEST_CASE("an alloy freezes over a range: each part of the heat by hand") {
    Catalogue c = castable();
    Metal& ab = c.metals[1]; // solid up to 700 K, liquid from 750 K
    ab.records.push_back(testing::series("specific_heat", {{200, 400}, {700, 400}}));
    Record melt = testing::series("specific_heat", {{750, 500}, {2000, 500}});
    melt.phase = Phase::liquid;
    ab.records.push_back(melt);
    ab.records.push_back(testing::single("latent_heat", 2e5));
    c.index();
    const Result<MeltHeat> h = heat_to_pour({c, ab, Conditions{}}, 300, 800);
    REQUIRE(h);
    CHECK(h->solid.value_si == Approx(160e3)); // 400 x (700 - 300)
    CHECK(h->fusion.value_si == Approx(200e3));
    CHECK(h->melt.value_si == Approx(22.5e3 + 25e3)); // 450 x (750 - 700) + 500 x (800 - 750)
    CHECK(h->total_J_kg == Approx(407.5e3));
    CHECK(!h->estimated);
}

TEST_CASE("real metals: more superheat, more heat, and never less than the heat of fusion (law)") {
    const Catalogue& c = testing::real_catalogue();
    for (const char* slug : {"copper", "sterling-silver", "bronze-tin-cast", "aluminium-a356-cast", "zamak-3", "tin"}) {
        INFO(slug);
        const Material m{c, *c.metal(slug), Conditions{}};
        const double liquid = liquidus(m)->value_si;
        double last = latent_heat(m)->value_si;
        for (int i = 0; i <= 4; ++i) {
            const Result<MeltHeat> h = heat_to_pour(m, 293.15, liquid + 40 * i);
            REQUIRE(h);
            CHECK(h->total_J_kg > last);
            last = h->total_J_kg;
        }
    }
}

TEST_CASE("contraction of a metal of constant coefficient is coefficient times cooling (law)") {
    const Catalogue c = castable();
    const Result<Contraction> k = free_contraction({c, c.metals.front(), Conditions{}});
    REQUIRE(k);
    CHECK(k->strain.value_si == Approx(20e-6 * (1000 - 293.15)));
    CHECK(!k->extended);
}

TEST_CASE("cited data that end short are extended and flagged, with more uncertainty (law)") {
    Catalogue c = castable();
    for (Record& r : c.metals.front().records)
        if (r.property == "linear_expansion") r.points.pop_back(); // up to 393 K only
    c.index();
    const Result<Contraction> k = free_contraction({c, c.metals.front(), Conditions{}});
    REQUIRE(k);
    CHECK(k->extended);
    CHECK(k->strain.estimated);
    CHECK(k->cited_up_to_K == Approx(393.15));
    CHECK(k->strain.value_si == Approx(20e-6 * (1000 - 293.15))); // the last mean
    CHECK(k->strain.standard_uncertainty_si > 0.1 * k->strain.value_si);
    CHECK(k->strain.how.find("short of the solidus") != std::string::npos);
}

TEST_CASE("an alloy's expansion is extended along the curve of its principal element") {
    Catalogue c = castable();
    for (Record& r : c.metals.front().records)
        if (r.property == "linear_expansion") r.points.back().value_si = 24e-6; // aa: 20 at 393 K, 24 at 1000 K
    Record mean = testing::series("linear_expansion", {{393.15, 18e-6}});
    mean.from_K = 293.15;
    c.metals[1].records.push_back(mean); // ab: 18 at 393 K, no more
    c.index();
    const Result<Contraction> k = free_contraction({c, c.metals[1], Conditions{}});
    REQUIRE(k);
    // aa at ab's solidus of 700 K: 20 + 4 (700 - 393.15) / 606.85 = 22.0226; ab rises as much: 18 x 22.0226 / 20.
    CHECK(k->strain.value_si == Approx(19.82030e-6 * 406.85).epsilon(1e-5));
    CHECK(k->last_mean_strain == Approx(18e-6 * 406.85));
    CHECK(k->extended);
}

TEST_CASE("a part twice as large freezes longer, up to four times as long (law)") {
    const Catalogue& c = testing::real_catalogue();
    const auto seconds = [&](const char* part, const char* process) {
        PourRequest r;
        r.metal = "copper";
        const casting::Shape shape = *part_from(part)->shape;
        r.pieces = {{part, shape, *measured(shape)}};
        r.process = process;
        r.superheat_K = 100;
        const Result<PourResult> plan = pour(c, r);
        REQUIRE(plan);
        REQUIRE(plan->freezing);
        CHECK(plan->freezing->low_s < plan->freezing->time_s.value_si);
        CHECK(plan->freezing->high_s > plan->freezing->time_s.value_si);
        return plan->freezing->time_s.value_si;
    };
    for (const char* process : {"sand", "shell", "permanent"}) {
        const double ratio = seconds("bar:40mmx80mm", process) / seconds("bar:20mmx40mm", process);
        INFO(process << " " << ratio);
        CHECK(ratio > 1.5);
        CHECK(ratio < 4.2);
    }
}

TEST_CASE("the feeder gives what it must: efficiency x feeder = share of both (law)") {
    for (const double share : {0.01, 0.03, 0.06, 0.10}) {
        FeedRules rules;
        rules.volume_ratio = 0;
        const Result<Feeder> f = feeder_for(1e-4, 0.001, share, rules);
        REQUIRE(f);
        const double v = f->by_demand.volume_m3();
        CHECK(rules.efficiency * v == Approx(share * (v + 1e-4)).epsilon(1e-9));
        CHECK(f->by_modulus.modulus_m() == Approx(0.0012).epsilon(1e-9));
        CHECK(f->chosen().volume_m3() >= std::max(v, f->by_modulus.volume_m3()) * (1 - 1e-12));
    }
    CHECK(!feeder_for(1e-4, 0.001, 0.14, FeedRules{}));
    CHECK(feeder_for(1e-4, 0.001, -0.03, FeedRules{})->by_demand.volume_m3() == 0); // grows on freezing
    const Cylinder c = cylinder_of_volume(1e-4, 1.5);
    CHECK(c.volume_m3() == Approx(1e-4));
    CHECK(c.height_m == Approx(1.5 * c.diameter_m));
}

TEST_CASE("a plan does not depend on the units of the part or on how it is cut (law)") {
    const Catalogue& c = testing::real_catalogue();
    const auto plan = [&](const std::vector<std::string>& parts) {
        PourRequest r;
        r.metal = "bronze-tin-cast";
        for (const std::string& part : parts) {
            const casting::Shape shape = *part_from(part)->shape;
            r.pieces.push_back({part, shape, *measured(shape)});
        }
        const Result<PourResult> p = pour(c, r);
        REQUIRE(p);
        return *p;
    };
    const PourResult mm = plan({"bar:25.4mmx50.8mm"}), in = plan({"bar:1inx2in"}), m = plan({"bar:0.0254mx0.0508m"});
    CHECK(mm.charge.charge_kg == Approx(in.charge.charge_kg).epsilon(1e-12));
    CHECK(mm.melt_energy_J == Approx(m.melt_energy_J).epsilon(1e-12));
    CHECK(in.patterns.front().dimensions.front().pattern_m ==
          Approx(0.0254 * (1 + in.contraction->strain.value_si)).epsilon(1e-12));
    const PourResult halves = plan({"bar:1inx1in", "bar:1inx1in"});
    CHECK(halves.part_volume_m3 == Approx(in.part_volume_m3).epsilon(1e-12));
    CHECK(halves.part_mass_kg == Approx(in.part_mass_kg).epsilon(1e-12));
}

TEST_CASE("every castable metal of the reference is planned or refused with a reason (law)") {
    const Catalogue& c = testing::real_catalogue();
    std::size_t planned = 0, with_pattern = 0, with_heat = 0;
    for (const Metal& metal : c.metals) {
        PourRequest r;
        r.metal = metal.slug;
        const casting::Shape shape{Form::bar, {0.02, 0.05, 0}};
        r.pieces = {{"bar", shape, *measured(shape)}};
        r.acknowledge_hazard = true;
        const Result<PourResult> p = pour(c, r);
        INFO(metal.slug << ": " << (p ? "" : p.problem().text));
        if (!p) {
            CHECK(!p.problem().text.empty());
            continue;
        }
        ++planned;
        with_pattern += p->contraction ? 1U : 0U;
        with_heat += p->melt_heat ? 1U : 0U;
        CHECK(p->charge.charge_kg > p->part_mass_kg);
        CHECK(p->heat.pour.value_si > 273);
        if (p->contraction) {
            CHECK(p->contraction->strain.value_si > 0);
            CHECK(p->contraction->strain.value_si < 0.035);
        }
        if (p->melt_heat) CHECK(p->melt_heat->total_J_kg > 1e4);
    }
    WARN(planned << " metals planned, " << with_pattern << " with a pattern, " << with_heat << " with a heat to melt");
    CHECK(planned > 100);
}

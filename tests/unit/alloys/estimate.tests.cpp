#include "core/alloys/impurity.hpp"
#include "core/alloys/melting.hpp"
#include "core/alloys/thermal.hpp"
#include "usecases/mix.hpp"
#include "usecases/mix_curve.hpp"
#include "usecases/mix_words.hpp"
#include "usecases/rank.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

const Catalogue& reference() {
    return real_catalogue();
}

MixResult mixed(const std::string& words, Treatment t = Treatment::annealed) {
    MixRequest request;
    request.composition = *composition_from(reference(), words);
    request.treatment = t;
    const auto r = mix(reference(), request);
    REQUIRE(r);
    return *r;
}

} // namespace

TEST_CASE("every estimate names its rule, range, error and sources") {
    const MixResult r = mixed("Ag 92.5 Cu 7.5");
    for (const Estimate* e :
         {&r.resistivity->estimate, &*r.density, &r.melting->liquidus, &r.melting->solidus, &*r.thermal_conductivity}) {
        CHECK_FALSE(e->rule.empty());
        CHECK_FALSE(e->range.empty());
        CHECK_FALSE(e->error.empty());
        CHECK_FALSE(e->sources.empty());
        CHECK(e->low90_si < e->value_si);
        CHECK(e->high90_si > e->value_si);
        for (const Citation& c : e->sources) CHECK(reference().reference(c.source) != nullptr);
    }
}

TEST_CASE("a system without a rule says so") {
    const MixResult r = mixed("Fe 70 Cr 18 Ni 12");
    REQUIRE_FALSE(r.resistivity);
    CHECK(r.resistivity.problem().text.find("no rule") != std::string::npos);
    REQUIRE_FALSE(r.melting);
    CHECK(r.melting.problem().text.find("no rule") != std::string::npos);
    CHECK(r.density); // volumes add without any rule for what dissolves
    const MixResult titanium = mixed("Ti 90 Al 6 V 4");
    CHECK_FALSE(titanium.density); // vanadium has no cited density here
}

TEST_CASE("temperature coefficient is refused outside Matthiessen's range") {
    CHECK(mixed("Cu 99.9 Ag 0.1").temperature_coefficient);
    const MixResult brass = mixed("Cu 70 Zn 30");
    REQUIRE_FALSE(brass.temperature_coefficient);
    CHECK(brass.temperature_coefficient.problem().kind == Problem::Kind::out_of_range);
}

TEST_CASE("impurities in copper, forward and back") {
    const auto p = effect_of_impurity(reference(), "Cu", "P", 0.02);
    REQUIRE(p);
    // By hand: 6.7 per at% x 63.546/30.974 = 13.7 uohm cm per wt%; 1.678 + 0.02 x 13.7 = 1.953.
    CHECK(p->resistivity_si * 1e8 == Approx(1.953).margin(0.005));
    const auto back = equivalent_impurities(reference(), "Cu", p->resistivity_si);
    REQUIRE(back);
    bool found = false;
    for (const ImpurityEffect& i : *back) {
        if (i.element != "P") continue;
        found = true;
        CHECK(i.content_wt == Approx(0.02));
        CHECK(i.low90_wt < 0.02);
        CHECK(i.high90_wt > 0.02);
    }
    CHECK(found);
    CHECK_FALSE(equivalent_impurities(reference(), "Cu", 1.6e-8));
    CHECK_FALSE(equivalent_impurities(reference(), "Cu", 5e-8));
    CHECK_FALSE(effect_of_impurity(reference(), "Cu", "Hg", 0.1));
    CHECK_FALSE(effect_of_impurity(reference(), "Cu", "P", -0.1));
}

TEST_CASE("phases, target and melt loss of a request") {
    MixRequest request;
    request.stocks = *stocks_from(reference(), "1.2kg sterling-silver");
    request.melt_loss = 0.02;
    request.phases_at_K = 873.15;
    request.target = MixTarget{{"Ag", 95.8, 0}, "silver", *metal_composition(reference(), "silver")};
    const auto r = mix(reference(), request);
    REQUIRE(r);
    CHECK(r->mass_kg == Approx(1.176));
    REQUIRE(r->addition);
    CHECK(r->addition->mass_kg == Approx(0.942857).epsilon(1e-6));
    CHECK(r->addition->total_kg == Approx((1.2 + 0.942857) * 0.98).epsilon(1e-6));
    CHECK(r->addition->result.wt("Ag") == Approx(95.8));
    REQUIRE(r->phases);
    REQUIRE(*r->phases);
    CHECK((*r->phases)->size() == 2);
    CHECK(r->precious == "Ag");
    request.target->content.wt_percent = 90;
    CHECK_FALSE(mix(reference(), request));
}

TEST_CASE("an estimated mix ranks like any metal and stays marked") {
    Catalogue c = reference();
    const Metal metal = estimated_metal(mixed("Ag 94 Cu 6"), "my scrap");
    CHECK(metal.slug == "estimate-my-scrap");
    for (const Record& r : metal.records) CHECK(r.citation.how_known == HowKnown::computed);
    c.metals.push_back(metal);
    c.index();
    const auto rho = evaluate(c, *c.metal("estimate-my-scrap"), "conductivity", {});
    REQUIRE(rho);
    CHECK(rho->how_known == HowKnown::computed);
    CHECK(rho->standard_uncertainty_si / rho->value_si > 0.05);
    RankRequest request;
    request.goal.formula = "conductivity";
    request.from = {"silver", "sterling-silver", "estimate-my-scrap"};
    const auto ranked = rank(c, request);
    REQUIRE(ranked);
    CHECK(ranked->ranked.size() == 3);
}

TEST_CASE("conductivity against composition with the measured alloys") {
    const auto curve = mix_curve(reference(), {"Ag", "Cu", Treatment::annealed, 50});
    REQUIRE(curve);
    CHECK(curve->diagram != nullptr);
    CHECK(curve->points.size() == 51);
    CHECK(curve->measured.size() >= 6);
    for (const MixCurvePoint& p : curve->points) CHECK(p.low90_si <= p.high90_si);
    CHECK_FALSE(mix_curve(reference(), {"Ag", "Xx", Treatment::annealed, 50}));
}

#include "core/alloys/impurity.hpp"
#include "core/alloys/melting.hpp"
#include "core/alloys/thermal.hpp"
#include "questions/mix/mix_curve.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/mix/mix_words.hpp"
#include "questions/rank/rank.hpp"

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

TEST_CASE("a mix named in words ranks like any metal and stays marked") {
    const std::string words = "mix:Ag 94 Cu 6 annealed";
    const Result<Catalogue> c = with_mixes(reference(), {words, "silver"});
    REQUIRE(c);
    CHECK(c->metals.size() == reference().metals.size() + 1);
    const Metal* metal = c->metal(words);
    REQUIRE(metal);
    CHECK(metal->name == "estimate: Ag 94 Cu 6 annealed");
    CHECK(metal->reference_condition == "annealed");
    CHECK(metal->family == "silver");
    for (const Record& r : metal->records) CHECK(r.citation.how_known == HowKnown::computed);
    const auto rho = evaluate(*c, *metal, "conductivity", {});
    REQUIRE(rho);
    CHECK(rho->how_known == HowKnown::computed);
    CHECK(rho->standard_uncertainty_si / rho->value_si > 0.05);
    RankRequest request;
    request.goal.formula = "conductivity";
    request.from = {"silver", "sterling-silver", words};
    const auto ranked = rank(*c, request);
    REQUIRE(ranked);
    CHECK(ranked->ranked.size() == 3);
}

TEST_CASE("a mix answers each condition with the estimate of that treatment") {
    const std::string words = "mix:Ag 92.5 Cu 7.5";
    const Result<Catalogue> c = with_mixes(reference(), {words});
    REQUIRE(c);
    for (const auto& [condition, treatment] : {std::pair{"as-cast", Treatment::as_cast},
                                               {"annealed", Treatment::annealed},
                                               {"solution-treated", Treatment::quenched},
                                               {"aged", Treatment::aged}}) {
        CAPTURE(condition);
        Conditions asked;
        asked.condition = condition;
        const auto e = evaluate(*c, *c->metal(words), "resistivity", asked);
        REQUIRE(e);
        CHECK(e->condition == condition);
        MixRequest request = *mix_request_from(reference(), words);
        request.treatment = treatment;
        const Result<MixResult> direct = mix(reference(), request);
        REQUIRE(direct);
        CHECK(e->value_si == Approx(direct->resistivity->estimate.value_si).epsilon(1e-12));
    }
}

TEST_CASE("a mix without a rule says so in the words of the rule") {
    const std::string words = "mix:Fe 64 Ni 36";
    const Result<Catalogue> c = with_mixes(reference(), {words});
    REQUIRE(c);
    const auto rho = evaluate(*c, *c->metal(words), "resistivity", {});
    REQUIRE_FALSE(rho);
    CHECK(rho.problem().text.find("no rule") != std::string::npos);
    CHECK(ferromagnetic_at(*c, *c->metal(words), 293));
}

TEST_CASE("words of a mix that can't be read are refused by name") {
    for (const char* words : {"mix:", "mix:Ag 92.5", "mix:Xx 100", "mix:-1kg silver", "mix:1kg nosuchmetal"}) {
        CAPTURE(words);
        const Result<Catalogue> c = with_mixes(reference(), {words});
        REQUIRE_FALSE(c);
        CHECK(c.problem().text.find(words) != std::string::npos);
    }
}

TEST_CASE("a stated impurity counts in the main estimate, dissolved") {
    MixRequest request;
    request.composition = *composition_from(reference(), "Cu");
    const Result<MixResult> plain = mix(reference(), request);
    request.impurities = {{"P", 0.02, 0}};
    const Result<MixResult> with = mix(reference(), request);
    REQUIRE(plain);
    REQUIRE(with);
    CHECK(with->composition.wt("P") == Approx(0.02));
    CHECK(with->composition.wt("Cu") == Approx(99.98));
    const double added = with->resistivity->estimate.value_si - plain->resistivity->estimate.value_si;
    CHECK(added == Approx(with->impurities.front().per_wt.value_si * 0.02).epsilon(0.005));
    for (const Treatment t : {Treatment::annealed, Treatment::aged}) { // iron too, though annealing would drop it
        request.treatment = t;
        request.impurities = {{"Fe", 0.1, 0}};
        const Result<MixResult> iron = mix(reference(), request);
        REQUIRE(iron);
        CHECK(iron->resistivity->estimate.value_si - plain->resistivity->estimate.value_si ==
              Approx(iron->impurities.front().per_wt.value_si * 0.1).epsilon(0.01));
    }
}

#include "core/laws/casting_value.hpp"

#include "core/alloys/resistivity.hpp"
#include "core/evaluate/sampled.hpp"
#include "core/laws/own_castings.hpp"
#include "questions/metals/conditions.hpp"
#include "questions/say/casting_words.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

Evaluated of_casting_in(const char* metal, const char* property, const CastingState& state, double kelvin = 293.15) {
    Conditions c;
    c.temperature_K = kelvin;
    c.casting = state;
    const auto e = evaluate(real_catalogue(), *real_catalogue().metal(metal), property, c);
    if (!e) FAIL(e.problem().text);
    return *e;
}

double handbook_of(const char* metal, const char* property) {
    return evaluate(real_catalogue(), *real_catalogue().metal(metal), property, {})->value_si;
}

CastingState stated(const std::string& feedstock, const std::string& porosity = "0%",
                    const std::string& treatment = "") {
    CastingState s;
    if (!feedstock.empty()) REQUIRE(read_feedstock(s, feedstock).empty());
    REQUIRE(read_porosity(s, porosity).empty());
    if (!treatment.empty()) REQUIRE(read_treatment(s, treatment).empty());
    return s;
}

std::pair<double, double> interval_90(const Evaluated& e) {
    Draws draws(2000, 1);
    std::vector<double> x = sampled(e, draws);
    return {quantile(x, 0.05), quantile(x, 0.95)};
}

} // namespace

TEST_CASE("a state of a casting is read from words") {
    CastingState s;
    CHECK(read_feedstock(s, "pipe").empty());
    CHECK(s.feedstock == "pipe");
    CHECK(read_feedstock(s, "P 0.02 Fe 0:0.01").empty());
    REQUIRE(s.contents.size() == 2);
    CHECK(s.contents[1] == ContentRange{"Fe", 0, 0.01});
    CHECK_FALSE(read_feedstock(s, "plumbing").empty());
    CHECK_FALSE(read_feedstock(s, "P").empty());
    CHECK_FALSE(read_feedstock(s, "P 0.02 Fe").empty());
    CHECK_FALSE(read_feedstock(s, "Zn 30").empty());
    CHECK(read_porosity(s, "1:3%").empty());
    CHECK(s.porosity->low == Approx(0.01));
    CHECK(s.porosity->high == Approx(0.03));
    CHECK_FALSE(read_porosity(s, "0.03").empty()); // 3 % or 0.03 %?
    CHECK_FALSE(read_porosity(s, "60%").empty());
    CHECK_FALSE(read_porosity(s, "3:1%").empty());
    CHECK(read_treatment(s, "aged").empty());
    CHECK_FALSE(read_treatment(s, "hammered").empty());
}

TEST_CASE("pores lower conductivity by the power three halves and density by themselves") {
    const Evaluated sigma = of_casting_in("copper-high-conductivity-cast", "conductivity", stated("", "4%"));
    CHECK(sigma.value_si == Approx(handbook_of("copper-high-conductivity-cast", "conductivity") * std::pow(0.96, 1.5)));
    const Evaluated rho = of_casting_in("copper", "density", stated("", "4%"));
    CHECK(rho.value_si == Approx(handbook_of("copper", "density") * 0.96));
    CHECK(rho.handbook_si == Approx(handbook_of("copper", "density")));
}

TEST_CASE("one draw of the pores moves all properties of a casting together") {
    const CastingState s = stated("Fe 0", "0:6%");
    Draws draws(500, 3);
    const std::vector<double> density = sampled(of_casting_in("copper", "density", s), draws),
                              sigma = sampled(of_casting_in("copper", "conductivity", s), draws),
                              rho = sampled(of_casting_in("copper", "resistivity", s), draws);
    for (std::size_t i = 0; i < sigma.size(); ++i) CHECK(sigma[i] * rho[i] == Approx(1));
    const auto least = std::min_element(density.begin(), density.end()) - density.begin();
    const auto most = std::max_element(density.begin(), density.end()) - density.begin();
    CHECK(sigma[static_cast<std::size_t>(least)] < sigma[static_cast<std::size_t>(most)]);
}

TEST_CASE("foreign elements add their published increments") {
    const double k = increment_per_wt(real_catalogue(), "Cu", "P")->value_si;
    const Evaluated e = of_casting_in("copper", "resistivity", stated("P 0.02"));
    CHECK(e.value_si == Approx(handbook_of("copper", "resistivity") + 0.02 * k));
    CHECK(e.basis == Basis::carried);
    // and the thermal resistivity by the same over L0 T
    const Evaluated heat = of_casting_in("copper", "thermal_conductivity", stated("P 0.02"));
    CHECK(1 / heat.value_si ==
          Approx(1 / handbook_of("copper", "thermal_conductivity") + 0.02 * k / (2.443e-8 * 293.15)));
}

TEST_CASE("a figure cited as cast is used, and only pores are added") {
    const Evaluated e = of_casting_in("bronze-gunmetal-88-10-2", "conductivity", stated(""));
    CHECK(e.value_si == Approx(handbook_of("bronze-gunmetal-88-10-2", "conductivity")));
}

TEST_CASE("a stated condition overrides the state, and so does what the person entered") {
    Conditions c;
    c.casting = stated("pipe", "5%");
    c.condition = "annealed";
    const Catalogue& all = real_catalogue();
    Conditions plain;
    plain.condition = "annealed";
    CHECK(evaluate(all, *all.metal("copper"), "conductivity", c)->value_si ==
          evaluate(all, *all.metal("copper"), "conductivity", plain)->value_si);
    Metal own = *all.metal("copper");
    own.own = true;
    c.condition = "reference";
    CHECK(evaluate(all, own, "conductivity", c)->value_si == handbook_of("copper", "conductivity"));
}

TEST_CASE("a melt has no casting's state") {
    const Evaluated e = of_casting_in("copper", "resistivity", stated("pipe", "5%"), 1400);
    Conditions plain;
    plain.temperature_K = 1400;
    CHECK(e.value_si == evaluate(real_catalogue(), *real_catalogue().metal("copper"), "resistivity", plain)->value_si);
}

TEST_CASE("nominal value and spread of a casting agree with its draws") {
    for (const char* metal : {"copper", "silver", "aluminium", "sterling-silver", "brass-cartridge"}) {
        const Evaluated e = of_casting_in(metal, "conductivity", CastingState{});
        const auto [low, high] = interval_90(e);
        INFO(metal << " " << low << " " << e.value_si << " " << high);
        CHECK(low < e.value_si);
        CHECK(e.value_si < high);
        CHECK((high - low) / 2 / 1.645 == Approx(e.standard_uncertainty_si).epsilon(0.3));
    }
}

TEST_CASE("own trials draw the next casting towards them, the more the more there are") {
    Catalogue c = real_catalogue();
    Conditions casting;
    casting.casting.emplace();
    const Evaluated before = *evaluate(c, *c.metal("copper"), "conductivity", casting);
    c.own_castings = {{"copper", 55e6, 0.02}};
    const Evaluated one = *evaluate(c, *c.metal("copper"), "conductivity", casting);
    c.own_castings = {{"copper", 55e6, 0.02}, {"copper", 55.5e6, 0.02}, {"copper", 54.5e6, 0.02}};
    const Evaluated three = *evaluate(c, *c.metal("copper"), "conductivity", casting);
    CHECK(before.value_si < one.value_si);
    CHECK(one.value_si < three.value_si);
    CHECK(three.value_si == Approx(55e6).epsilon(0.01));
    CHECK(three.standard_uncertainty_si < one.standard_uncertainty_si);
    CHECK(one.standard_uncertainty_si < before.standard_uncertainty_si);
    CHECK(three.trail.back().find("your copper, from 3 trials") == 0);
    casting.casting->own_trials = false;
    CHECK(evaluate(c, *c.metal("copper"), "conductivity", casting)->value_si == before.value_si);
    casting.casting.reset();
    CHECK(evaluate(c, *c.metal("copper"), "conductivity", casting)->value_si == handbook_of("copper", "conductivity"));
}

TEST_CASE("trials with one magnet share its error: three of them know little more than one") {
    const std::vector<double> drawn = [] {
        std::vector<double> out;
        for (int i = 0; i < 4000; ++i) out.push_back(1 / (40e6 + 5e3 * i));
        return out;
    }();
    const auto spread = [&](std::vector<OwnCasting> trials) { return next_casting(trials, drawn, 0.01).mean_relative; };
    const OwnCasting apart{"copper", 50e6, 0.05}, shared{"copper", 50e6, 0.05, "magnet", 0.049};
    CHECK(spread({apart, apart, apart}) < 0.65 * spread({apart}));
    CHECK(spread({shared, shared, shared}) > 0.9 * spread({shared}));
}

TEST_CASE("questions about a part ask for a casting, questions about a metal for the handbook's") {
    const QuestionOf<Conditions>& plain = conditions_question();
    const Catalogue& c = real_catalogue();
    CHECK_FALSE(plain.read(Stated(plain), c)->casting);
    Stated s(plain);
    s.set("feedstock", "pipe");
    CHECK(plain.read(s, c)->casting->feedstock == "pipe");
    s.set("as", "handbook");
    const auto both = plain.read(s, c);
    REQUIRE_FALSE(both);
    CHECK(both.problem().text == "--feedstock 'pipe': not beside --as handbook: one of the two");
    s.set("feedstock", "");
    CHECK_FALSE(plain.read(s, c)->casting);
    CHECK_FALSE(plain.read(Stated(plain).set("porosity", "0.02"), c));
}

TEST_CASE("the state of a casting in words") {
    CastingState s;
    CHECK(casting_words(s) == "as cast, feedstock not stated");
    const std::string copper = casting_words(real_catalogue(), *real_catalogue().metal("copper"), s);
    CHECK(copper == "as cast, feedstock not stated, phosphorus 0 to 0.04 %, porosity 0 to 4 %");
    s.feedstock = "wire";
    s.treatment = "aged";
    CHECK(casting_words(s) == "cast and aged from wire scrap");
}

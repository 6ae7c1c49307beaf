// Sentences of versus that were once untrue: each must now hold in every word.
#include "questions/rank/versus.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

VersusResult asked(const std::string& a, const std::string& b, const std::string& goal, double at_K = 293.15) {
    VersusRequest q{a, b, {}, {}, 2000, 1};
    q.goal.goal = goal;
    q.conditions.temperature_K = at_K;
    const Result<VersusResult> r = versus(real_catalogue(), q);
    REQUIRE(r);
    return *r;
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("versus names what counts against the winner as a hinderer, not as what decides") {
    const VersusResult heat = asked("copper", "aluminium-a356-cast", "heat-spreading-per-cost");
    REQUIRE(heat.better.metal->slug == "aluminium-a356-cast");
    INFO(heat.reason);
    CHECK(heat.in_spite_of ==
          std::vector<std::string>{"thermal_conductivity"}); // copper's is the higher: common knowledge
    CHECK(says(heat.reason, "decide together, in spite of thermal conductivity ("));
    CHECK(says(heat.reason.substr(0, heat.reason.find("in spite of")), "price ("));

    const VersusResult light = asked("aluminium", "magnesium", "light-conductor");
    INFO(light.reason);
    CHECK(light.deciding == "resistivity");
    CHECK(light.in_spite_of == std::vector<std::string>{"density"}); // magnesium is the lighter
}

TEST_CASE("versus with a figure known only as a range about zero is refused, not answered with inf or nan") {
    VersusRequest q{"manganin", "constantan", {},
                    {},         2000,         1}; // constantan's coefficient is printed as -60 to 60 ppm/K
    q.goal.goal = "low-drift-resistor";
    const Result<VersusResult> r = versus(real_catalogue(), q);
    if (r) { // once that range is drawn from
        CHECK(std::isfinite(r->difference_median));
        return;
    }
    CHECK(r.problem().kind == Problem::Kind::no_value);
    CHECK(says(r.problem().text, "range about zero"));
}

TEST_CASE("versus of what is not well away from zero gives a difference in the property's unit") {
    VersusRequest q{"aluminium", "copper", {}, {}, 2000, 1};
    q.goal.formula = "solidification_contraction - 0.05";
    const Result<VersusResult> r = versus(real_catalogue(), q);
    REQUIRE(r);
    INFO(r->sentence);
    CHECK(r->better.metal->slug == "aluminium");
    CHECK(std::isnan(r->ratio_median));
    CHECK(r->difference_unit == "%");
    const double percent = 100 * (r->better.merit - r->worse.merit);
    CHECK(r->difference_median == Approx(percent).margin(0.5));
}

TEST_CASE("versus of freezing ranges gives kelvin, and solidus and liquidus decide as one range") {
    for (const auto& [a, b] :
         {std::pair{"brass-cartridge", "bronze-aluminium-cast"}, {"aluminium-a356-cast", "aluminium-413-cast"}}) {
        const Catalogue& c = real_catalogue();
        if (!c.metal(a) || !c.metal(b)) FAIL("no " << a << " or " << b);
        const VersusResult r = asked(a, b, "narrow-freezing");
        INFO(r.sentence);
        CHECK(std::isnan(r.ratio_median));
        CHECK(r.difference_unit == "K");
        CHECK(r.difference_median >= 0);
        CHECK(says(r.reason, "melting range ("));
    }
}

TEST_CASE("versus of melting points gives kelvin and says no temperature that has no part in it") {
    const VersusResult r = asked("tin", "pewter", "lowest-pour");
    INFO(r.sentence);
    CHECK(r.better.metal->slug == "tin");
    CHECK_FALSE(says(r.sentence, " at 20 °C"));
    CHECK_FALSE(says(r.sentence, "factor"));
    // Pure tin melts at 231.928 degC (a fixed point of ITS-90).
    CHECK(r.difference_median == Approx(r.worse.merit - 505.078).margin(2));
    CHECK(says(r.sentence, " K ("));
}

TEST_CASE("versus blames no addition that does not dissolve") {
    for (const char* other : {"copper-of", "silver"}) {
        const VersusResult r = asked("copper-etp", other, "strongest-brake");
        INFO(r.sentence);
        CHECK_FALSE(says(r.sentence, "% oxygen")); // lies in copper as Cu2O
    }
    const VersusResult tellurium = asked("copper", "copper-tellurium", "strongest-brake");
    CHECK_FALSE(says(tellurium.reason, "% tellurium")); // Cu2Te
    CHECK(
        says(asked("copper", "sterling-silver", "strongest-brake").reason, "7.5 % copper in sterling silver scatters"));
    for (const Metal& m : real_catalogue().metals) {
        if (m.slug.rfind("zamak", 0) != 0 && m.slug.rfind("za-", 0) != 0) continue;
        const VersusResult r = asked("zinc", m.slug, "strongest-brake");
        CHECK_FALSE(says(r.reason, "scatter")); // two phases
    }
}

TEST_CASE("versus in the cold says how pure the two metals are taken to be") {
    CHECK(says(asked("copper", "silver", "strongest-brake", 77.355).reason, "as pure as those cited"));
    CHECK_FALSE(says(asked("copper", "silver", "strongest-brake").reason, "as pure"));
}

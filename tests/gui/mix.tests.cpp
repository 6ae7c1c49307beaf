#include "gui/actions/actions.hpp"
#include "gui/state/explain.hpp"
#include "questions/mix/mix_metal.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

void open_mix(Desk& desk) {
    desk.session.view.view = "mix";
    desk.settle();
}

double number(const std::string& text) {
    return std::stod(text);
}

double conductivity_MS_m(const std::string& words) {
    const Result<MixRequest> request = mix_request_from(testing::real_catalogue(), words);
    REQUIRE(request);
    const Result<MixResult> r = mix(testing::real_catalogue(), *request);
    REQUIRE(r);
    return 1e-6 / r->resistivity->estimate.value_si;
}

} // namespace

TEST_CASE("Mix starts with a scenario already answered") {
    Desk desk(testing::real_catalogue());
    open_mix(desk);
    CHECK(desk.text("mix.head") == "Ag 940 fine"); // 1.2 kg of 925 and 0.3 kg of 1000: 1410 g in 1500 g
    CHECK(desk.text("mix.wt.Ag") == "94");
    // balance of silver: (0.958 * 1.5 - 1.41) / (1 - 0.958) = 0.6429 kg
    CHECK(desk.text("mix.addition").find("Add 0.64286 kg silver") == 0);
    CHECK(desk.text("mix.phases").find("liquid") != std::string::npos);
    CHECK(number(desk.text("mix.conductivity")) ==
          Approx(conductivity_MS_m("mix:1.2kg sterling-silver + 300g silver")).epsilon(0.01));
    desk.point_at("mix.resistivity");
    CHECK(desk.text("hover").find("rule: ") != std::string::npos);
    CHECK(desk.text("hover").find("nine in ten known alloys") != std::string::npos);
}

TEST_CASE("a stock typed in Mix is counted once it can be read") {
    Desk desk(testing::real_catalogue());
    open_mix(desk);
    desk.fill("mix.stock.1.mass", "minus");
    CHECK(desk.shows("mix.stock.1.mass.fault"));
    CHECK(desk.text("mix.wt.Ag") == "94");
    desk.fill("mix.stock.1.mass", "1.2 kg");
    CHECK_FALSE(desk.shows("mix.stock.1.mass.fault"));
    CHECK(desk.text("mix.wt.Ag") == "96.25");
    desk.fill("mix.stock.1.metal", "nosuchmetal");
    CHECK(desk.text("mix.stock.1.metal.fault").find("unknown metal") == 0);
    desk.fill("mix.stock.1.metal", "(Ag 80 Cu 20)");
    CHECK(desk.text("mix.wt.Ag") == "86.25");
    desk.click("mix.stock.add");
    desk.settle();
    CHECK(desk.session.view.mix.words.stocks.size() == 3);
    desk.click("mix.stock.2.remove");
    desk.settle();
    CHECK(desk.text("mix.wt.Ag") == "86.25");
}

TEST_CASE("a target out of reach is said at its field, and the rest still stands") {
    Desk desk(testing::real_catalogue());
    open_mix(desk);
    desk.fill("mix.with", "copper");
    CHECK(desk.text("mix.target.fault").find("between") != std::string::npos);
    CHECK_FALSE(desk.shows("mix.addition"));
    CHECK(desk.shows("mix.conductivity"));
}

TEST_CASE("impurities in copper lower its conductivity, and a measured one is explained") {
    Desk desk(testing::real_catalogue());
    desk.session.view.mix.words.bare = true;
    desk.session.view.mix.words.composition = "Cu";
    desk.session.view.mix.words.target.clear();
    open_mix(desk);
    const double pure = number(desk.text("mix.conductivity"));
    desk.fill("mix.impurities", "P 0.02");
    CHECK(number(desk.text("mix.conductivity")) < 0.9 * pure);
    CHECK(desk.text("mix.impurity.P") == "0.020");
    desk.fill("mix.measured", "85 %IACS");
    CHECK(desk.shows("mix.equivalent.P"));
    desk.fill("mix.impurities", "Hg 0.1");
    CHECK(desk.text("mix.impurities.fault").find("no coefficient") != std::string::npos);
    CHECK(desk.shows("mix.equivalent.P"));
    desk.fill("mix.measured", "120 %IACS");
    CHECK(desk.shows("mix.measured.fault"));
}

TEST_CASE("a pinned mix is a metal of every view, marked as an estimate") {
    Desk desk(testing::real_catalogue());
    open_mix(desk);
    desk.click("mix.pin");
    desk.settle();
    const std::string slug = "mix:1.2 kg sterling-silver + 300 g silver";
    CHECK(desk.text("pin." + slug).find("estimate: ") == 0);
    desk.session.view.rank.goal = "strongest-brake";
    desk.session.view.rank.only_pinned = true;
    desk.session.view.view = "rank";
    desk.settle();
    bool ranked = false;
    for (int i = 1; i <= 5; ++i) ranked = ranked || desk.text("rank.row." + std::to_string(i)) == slug;
    CHECK(ranked);
    desk.session.view.view = "compare";
    desk.settle();
    CHECK(desk.shows("compare." + slug + ".resistivity"));
    const Property& resistivity = *desk.session.catalogue.property("resistivity");
    const Metal& mixed = *desk.session.catalogue.metal(slug);
    const std::string story = explain(desk.session.catalogue, mixed, resistivity,
                                      evaluate(desk.session.catalogue, mixed, "resistivity", {}), UnitSystem::shown)
                                  .text(); // as the evidence copies it
    CHECK(story.find("how known: computed") != std::string::npos);
    CHECK(story.find("estimated from the composition by the rule") != std::string::npos);
    desk.session.view.view = "curves";
    desk.settle();
    CHECK(desk.shows("curve." + slug));
    desk.session.view.pour.set("metal", slug);
    desk.session.view.view = "pour";
    desk.settle();
    CHECK(desk.shows("pour.Charge"));
    desk.click("unpin." + slug);
    desk.settle();
    CHECK_FALSE(desk.shows("pin." + slug));
}

TEST_CASE("every chart of Mix answers the pointer") {
    Desk desk(testing::real_catalogue());
    open_mix(desk);
    desk.point_at("mix.diagram.composition.0");
    CHECK(desk.text("hover").find("liquidus") != std::string::npos);
    desk.click("mix.chart.1");
    desk.settle();
    desk.click("mix.curve.sterling-silver.0");
    desk.settle();
    CHECK(desk.session.view.selected == "sterling-silver");
    CHECK(desk.session.view.view == "metals");
}

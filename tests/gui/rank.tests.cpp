// The Rank view: a fall as a goal, two goals at once, prices in their forms.
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using testing::Desk;

TEST_CASE("the longest fall takes magnet and tube from the window's set-up and shows the wall") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.goal = "longest-fall";
    desk.session.view.rank.only_pinned = true; // few metals: quick
    desk.settle();
    CHECK(desk.text("fall.magnet") == desk.session.view.drop_setup.magnet);
    CHECK(desk.shows("rank.1.cost"));
    CHECK_FALSE(desk.shows("rank.1.wall")); // the same for all
    CHECK_FALSE(desk.shows("fall.budget"));
    desk.click("holding.2");
    desk.settle();
    CHECK(desk.text("fall.budget") == "20 USD");
    CHECK(desk.text("rank.1.wall") != desk.text("rank.2.wall"));
    CHECK_FALSE(desk.shows("rank.1.cost"));
    desk.click("fall.magnet");
    desk.fill("fall.magnet.sizes.diameter", "99");
    CHECK(desk.text("fall.magnet.sizes.fault").find("bore") != std::string::npos); // wider than it
}

TEST_CASE("two goals at once: the front is drawn and the second goal chosen") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    CHECK_FALSE(desk.shows("second"));
    desk.click("picture.1");
    desk.settle();
    CHECK(desk.text("second") == "light-conductor");
    REQUIRE(desk.session.tradeoff());
    REQUIRE(*desk.session.tradeoff());
    const std::string label = (*desk.session.tradeoff())->second_label;
    desk.click("second");
    desk.click("second.lowest-pour");
    desk.settle();
    CHECK((*desk.session.tradeoff())->second_label != label);
}

TEST_CASE("the second goal can be a formula and a broken one is refused at its field") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.two_goals = true;
    desk.settle();
    desk.click("second");
    desk.click("second.own");
    desk.fill("second.formula", "density * resistivity");
    desk.click("second.best.1");
    desk.settle();
    REQUIRE(*desk.session.tradeoff());
    CHECK((*desk.session.tradeoff())->second_formula == "density * resistivity");
    CHECK_FALSE((*desk.session.tradeoff())->second_high);
    desk.fill("second.formula", "density + resistivity");
    CHECK(desk.shows("second.formula.fault"));
    CHECK(desk.session.view.rank.second_formula == "density * resistivity");
    desk.click("second");
    desk.click("second.lowest-pour");
    desk.settle();
    CHECK_FALSE(desk.shows("second.formula"));
    CHECK((*desk.session.tradeoff())->second_label == testing::real_catalogue().goal("lowest-pour")->label);
}

TEST_CASE("a range of temperatures counts in rankings and versus while other views name its end") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.goal = "strongest-brake";
    desk.session.view.rank.only_pinned = true;
    desk.session.view.rank.two_goals = true;
    desk.settle();
    CHECK(std::isnan((*desk.session.ranking())->to_K));
    desk.fill("temperature", "77 K:300 K");
    desk.settle();
    CHECK((*desk.session.ranking())->to_K == 300);
    CHECK((*desk.session.ranking())->conditions.temperature_K == 77);
    CHECK((*desk.session.tradeoff())->to_K == 300);
    CHECK_FALSE(desk.shows("temperature.note"));
    desk.session.view.pins = {"copper", "silver"};
    desk.session.view.view = "compare";
    desk.settle();
    CHECK(desk.text("versus.sentence").find("at the warm end") != std::string::npos);
    CHECK(desk.text("temperature.note").find("77 K") != std::string::npos);
    desk.fill("temperature", "300 K:77 K");
    CHECK(desk.shows("temperature.fault"));
    desk.fill("temperature", "77 K");
    desk.settle();
    CHECK(std::isnan((*desk.session.versus())->to_K));
    CHECK_FALSE(desk.shows("temperature.note"));
}

TEST_CASE("prices: the order at exchange, retail and scrap, and the form that is used") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    CHECK(desk.shows("price.exchange.order"));
    CHECK(desk.shows("price.scrap.order"));
    const std::string median = desk.text("rank.1.median");
    desk.click("price.retail");
    desk.settle();
    CHECK(desk.session.rank_request().conditions.price_form == "retail");
    CHECK(desk.text("rank.1.median") != median);
}

TEST_CASE("without samples the order is that of the figures, and no interval or chance is made up") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.goal = "strongest-brake";
    desk.settle();
    CHECK(desk.text("rank.1.interval") != "–");
    desk.click("samples.0");
    desk.settle();
    CHECK(desk.text("rank.row.1") == "silver");
    for (const char* column : {"interval", "p_first", "ranks"})
        CHECK(desk.text(std::string("rank.1.") + column) == "–");
    CHECK(desk.text("rank.settling") == "");
    desk.click("samples.1");
    desk.settle();
    CHECK(desk.text("rank.1.interval") != "–");
}

TEST_CASE("stopped work says so and can be worked out after all") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    desk.session.view.rank.goal = "lowest-pour";
    desk.session.ranking(); // asked
    desk.session.ranking_work().cancel();
    desk.frames(3);
    REQUIRE(desk.session.ranking_work().cancelled());
    desk.click("rank.work.again");
    desk.settle();
    CHECK_FALSE(desk.shows("rank.work.again"));
    CHECK((*desk.session.ranking())->goal == "lowest-pour");
}

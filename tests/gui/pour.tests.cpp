#include "answers/pour/pour_report.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

std::string figure_of(const PourResult& plan, const std::string& title) {
    for (const PageSection& s : in_print(pour_page(plan, testing::real_catalogue(), UnitSystem::shown)).sections)
        if (s.title == title) return s.figure;
    return {};
}

Result<PourResult> plan_of(const Stated& stated) {
    const Result<PourRequest> request = pour_request_from(stated, {}, testing::real_catalogue());
    REQUIRE(request);
    return pour(testing::real_catalogue(), *request);
}

} // namespace

TEST_CASE("the pour plan on screen is the plan of the use case, and follows what is typed") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "pour";
    desk.settle();
    const Result<PourResult> first = plan_of(desk.session.view.pour);
    REQUIRE(first);
    CHECK(desk.text("pour.Charge") == figure_of(*first, "Charge"));
    CHECK(desk.text("pour.Pattern") == figure_of(*first, "Pattern"));

    desk.click("pour.superheat");
    desk.type("60K");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.view.pour.text("superheat") == "60K");
    const Result<PourResult> cooler = plan_of(desk.session.view.pour);
    REQUIRE(cooler);
    CHECK(desk.text("pour.Temperatures") == figure_of(*cooler, "Temperatures"));
    CHECK(figure_of(*cooler, "Temperatures") != figure_of(*first, "Temperatures"));
}

TEST_CASE("what is asked of a plan is answered without scrolling at 1280x720") {
    for (const float scale : {1.0F, 2.0F}) {
        Desk desk(testing::real_catalogue(), 1280 * static_cast<double>(scale), 720 * static_cast<double>(scale),
                  scale);
        desk.session.view.view = "pour";
        desk.settle();
        const double bottom = 720 * static_cast<double>(scale), line = 10 * static_cast<double>(scale);
        // a probe records only what can be seen: pour temperature, charge, scale, feeder, cost, limits
        for (const char* id :
             {"pour.Temperatures", "pour.Charge", "pour.Pattern", "pour.Feeder", "pour.Heat and cost", "pour.Limits"}) {
            CAPTURE(id, scale);
            REQUIRE(desk.shows(id));
            const Probe::Item& item = desk.ui.probe.items().at(id);
            CHECK(item.y + item.height <= bottom);
            CHECK(item.height > line); // not a sliver at the edge
        }
        std::vector<std::string> sizes; // of the pattern
        for (const auto& [id, item] : desk.ui.probe.items())
            if (id.starts_with("pour.Pattern.") && id.ends_with(".0") && item.height > line) sizes.push_back(item.text);
        CHECK(sizes == std::vector<std::string>{"bore", "outside diameter", "length"});
    }
}

TEST_CASE("a word of the plan that can't be read stays in its field with the reason") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "pour";
    desk.settle();
    desk.click("pour.superheat");
    desk.type("9 apples");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.view.pour.text("superheat").empty());
    CHECK(desk.text("pour.superheat") == "9 apples");
    CHECK_FALSE(desk.text("pour.superheat.fault").empty());
    CHECK(desk.shows("pour.Charge"));
}

TEST_CASE("a metal that must not be melted at home is refused on screen") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "pour";
    desk.session.view.pour.set("metal", "beryllium");
    desk.settle();
    CHECK(desk.text("pour.refused").find("beryll") != std::string::npos);
    CHECK_FALSE(desk.shows("pour.Charge"));
}

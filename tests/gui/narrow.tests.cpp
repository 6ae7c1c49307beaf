// A window as narrow as a phone: one column, everything reached without a hover, rows that a finger hits.
#include "questions/views.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

constexpr double phone_width = 390, phone_height = 844, whole_page = 4000, finger = 32; // points

double place_of(const Desk& desk, const std::string& id) {
    INFO("on screen: " << id);
    REQUIRE(desk.shows(id));
    return desk.ui.probe.items().at(id).y;
}

double height_of(const Desk& desk, const std::string& id) {
    INFO("on screen: " << id);
    REQUIRE(desk.shows(id));
    return desk.ui.probe.items().at(id).height;
}

Desk& open(Desk& desk, const char* view) {
    desk.session.view.view = view;
    desk.settle();
    return desk;
}

} // namespace

TEST_CASE("a narrow window reaches every view by its list, and comes back to each") {
    Desk desk(testing::real_catalogue(), phone_width, phone_height);
    desk.settle();
    for (const ViewName& view : view_names) {
        const std::string name(view.name);
        CAPTURE(name);
        desk.click("views");
        desk.click("view." + name);
        desk.settle();
        CHECK(desk.text("view") == name);
        CHECK(desk.text("views") == view.label);
    }
}

TEST_CASE("one width decides: below it one column, from it on the strip of views") {
    for (const float scale : {1.0F, 2.0F}) {
        const double edge = static_cast<double>(theme::narrow_below * scale);
        Desk narrow(testing::real_catalogue(), edge - 1, 900 * static_cast<double>(scale), scale);
        narrow.settle();
        CHECK(narrow.shows("views"));
    }
    Desk wide(testing::real_catalogue(), static_cast<double>(theme::narrow_below), 900);
    wide.settle();
    CHECK_FALSE(wide.shows("views"));
    CHECK(wide.shows("view.drop"));
}

TEST_CASE("temperature, condition, units and light fold out of one button") {
    Desk desk(testing::real_catalogue(), phone_width, phone_height);
    desk.settle();
    CHECK(desk.text("settings") == "20 °C, usual state");
    CHECK_FALSE(desk.shows("temperature"));
    desk.click("settings");
    desk.fill("temperature", "77 K");
    CHECK(desk.session.conditions().temperature_K == Approx(77));
    desk.click("units.1");
    CHECK(desk.session.view.workshop_units);
    const bool dark = desk.session.view.dark;
    desk.click("theme");
    CHECK(desk.session.view.dark != dark);
    CHECK(desk.shows("condition"));
    desk.click("settings");
    CHECK_FALSE(desk.shows("temperature"));
}

TEST_CASE("a temperature that can't be read keeps its field open") {
    Desk desk(testing::real_catalogue(), phone_width, phone_height);
    desk.settle();
    desk.click("settings");
    desk.fill("temperature", "warm");
    desk.click("settings");
    CHECK(desk.shows("temperature"));
    CHECK(desk.shows("temperature.fault"));
}

TEST_CASE("Drop in one column: the race, its button, the numbers, the set-up folded") {
    Desk desk(testing::real_catalogue(), phone_width, whole_page);
    desk.session.view.drop.face = "race";
    open(desk, "drop");
    CHECK(place_of(desk, "answer") < place_of(desk, "drop.race.tube-0"));
    CHECK(place_of(desk, "drop.race.tube-0") < place_of(desk, "drop.race.go"));
    CHECK(place_of(desk, "drop.race.go") < place_of(desk, "drop.time"));
    CHECK_FALSE(desk.shows("drop.bore"));
    CHECK(height_of(desk, "drop.race.go") >= static_cast<double>(theme::touch_button));
    CHECK(desk.text("drop.setup").empty());
}

TEST_CASE("Metals in one column: a row opens its sheet, and there is a way back") {
    Desk desk(testing::real_catalogue(), phone_width, phone_height);
    desk.session.view.find = "copper";
    desk.session.view.selected = "copper";
    open(desk, "metals");
    CHECK_FALSE(desk.shows("sheet.metal"));
    CHECK(height_of(desk, "list.copper") >= finger);
    desk.click("list.copper");
    desk.settle();
    CHECK(desk.text("sheet.metal") == "copper");
    CHECK_FALSE(desk.shows("list.copper"));
    desk.click("metals.list");
    desk.settle();
    CHECK(desk.shows("list.copper"));
    CHECK_FALSE(desk.shows("sheet.metal"));
}

TEST_CASE("a pin opens the sheet of its metal in a narrow window") {
    Desk desk(testing::real_catalogue(), phone_width, phone_height);
    open(desk, "rank");
    desk.click("pin.copper");
    desk.settle();
    CHECK(desk.text("view") == "metals");
    CHECK(desk.text("sheet.metal") == "copper");
}

TEST_CASE("Rank in one column: the first rows, all of them when asked, the picture below") {
    Desk desk(testing::real_catalogue(), phone_width, whole_page);
    open(desk, "rank");
    CHECK(desk.shows("rank.row.1"));
    CHECK(height_of(desk, "rank.row.1") >= finger);
    CHECK_FALSE(desk.shows("rank.row.40"));
    CHECK_FALSE(desk.shows("where")); // among the limits, folded
    CHECK(place_of(desk, "rank.row.1") < place_of(desk, "rank.chart"));
    desk.click("rank.all");
    desk.settle();
    CHECK(desk.shows("rank.row.40"));
}

TEST_CASE("Pour in one column: what is cast is folded, the sheet stands below") {
    Desk desk(testing::real_catalogue(), phone_width, whole_page);
    open(desk, "pour");
    CHECK(desk.text("pour.choice").empty());
    CHECK(desk.shows("pour.Temperatures"));
}

TEST_CASE("evidence and help cover a narrow window, and another view comes to the front of them") {
    Desk desk(testing::real_catalogue(), phone_width, whole_page);
    desk.session.passing.sheet_open = true;
    open(desk, "metals");
    desk.click("sheet.resistivity");
    desk.settle();
    CHECK(desk.text("evidence.of") == "copper.resistivity");
    CHECK_FALSE(desk.shows("sheet.metal"));
    desk.click("views");
    desk.click("view.rank");
    desk.settle();
    CHECK_FALSE(desk.shows("evidence.of"));
    CHECK(desk.shows("rank.row.1"));
    desk.click("help");
    desk.settle();
    CHECK(desk.text("help.page") == "rank");
    CHECK_FALSE(desk.shows("rank.row.1"));
    desk.click("views");
    desk.click("view.drop");
    desk.settle();
    CHECK_FALSE(desk.shows("help.page"));
}

TEST_CASE("a wheel over a chart scrolls the page of a narrow window") {
    Desk desk(testing::real_catalogue(), phone_width, phone_height);
    open(desk, "curves");
    const PlotRange before = desk.ui.plots.at("curve.chart").range;
    const double place = place_of(desk, "curve.chart");
    desk.point_at("curve.chart");
    ImGui::GetIO().MouseWheel = -1;
    desk.frames(1);
    ImGui::GetIO().MouseWheel = 0;
    desk.frames(3);
    CHECK(desk.ui.plots.at("curve.chart").range == before);
    CHECK(place_of(desk, "curve.chart") < place);
}

#include "questions/drop/drop_figures.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

DropRequest request_of(const Desk& desk) {
    DropRequest r;
    r.setup = desk.session.view.drop_setup;
    r.metal = desk.session.drop.metal();
    r.conditions = desk.session.part_conditions(); // a casting, where nothing else is asked
    return r;
}

std::string figure(const DropResult& r, const std::string& id) {
    for (const DropFigure& f : drop_figures(testing::real_catalogue(), r, UnitSystem::shown))
        if (f.id == id) return f.value;
    return {};
}

} // namespace

TEST_CASE("Drop starts with an answer, and follows what is typed") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.settle();
    const Result<DropResult> first = drop(testing::real_catalogue(), request_of(desk));
    REQUIRE(first);
    CHECK(desk.text("drop.time") == figure(*first, "time"));
    CHECK(desk.text("drop.speed") == figure(*first, "speed"));
    CHECK(desk.shows("drop.bars.copper.0"));
    desk.fill("drop.outside", "30mm");
    CHECK(desk.session.view.drop_setup.tube == "18mm:30mm:400mm");
    const Result<DropResult> thicker = drop(testing::real_catalogue(), request_of(desk));
    REQUIRE(thicker);
    CHECK(thicker->fall.time_s > first->fall.time_s);
    CHECK(desk.text("drop.time") == figure(*thicker, "time"));
}

TEST_CASE("a length that can't be read stays in its field with the reason") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.settle();
    const std::string before = desk.text("drop.time");
    desk.fill("drop.bore", "19 apples");
    CHECK(desk.text("drop.bore") == "19 apples");
    CHECK(desk.text("drop.bore.fault").find("unit") != std::string::npos);
    CHECK(desk.session.view.drop_setup.tube == "18mm:24mm:400mm");
    CHECK(desk.text("drop.time") == before);
}

TEST_CASE("a magnet wider than the bore is refused beside the fields") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.settle();
    desk.fill("drop.diameter", "19mm");
    CHECK_FALSE(desk.text("drop.problem").empty());
    CHECK(desk.text("stale") == "for the last readable input"); // the last answer stays, and says that it is the last
}

TEST_CASE("a number of Drop names its sources, and a click opens the metal's") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.settle();
    desk.point_at("drop.time");
    CHECK(desk.text("hover").find("matula-1979") != std::string::npos);
    CHECK(desk.text("hover").find("remanence of N42") != std::string::npos);
    desk.click("drop.time");
    desk.settle();
    CHECK(desk.text("view") == "sources");
}

TEST_CASE("two set-ups are set against each other") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.settle();
    desk.click("drop.against.1");
    desk.settle();
    CHECK(desk.session.view.drop.second == desk.session.view.drop_setup); // the second begins as the first
    desk.session.view.drop.second.tube = "18mm:30mm:400mm";
    desk.session.view.drop.second_metal = "aluminium-6061";
    desk.settle();
    AgainstRequest request{request_of(desk), request_of(desk)};
    request.second.setup = desk.session.view.drop.second;
    request.second.metal = "aluminium-6061";
    const Result<AgainstResult> told = against(testing::real_catalogue(), request);
    REQUIRE(told);
    CHECK(desk.text("drop.sentence") == told->sentence);
    CHECK(desk.text("drop.second.time") == figure(told->second, "time"));
}

TEST_CASE("a slit in the tube counts in the ranking by fall time as soon as it is typed") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.goal = "longest-fall";
    desk.session.view.rank.only_pinned = true; // few metals: quick
    desk.session.view.drop_setup.tube = "18mm:20mm:400mm";
    desk.settle();
    const double whole = std::stod(desk.text("rank.1.median"));
    desk.session.view.drop_setup.slits = "1";
    desk.settle();
    const double slit = std::stod(desk.text("rank.1.median"));
    CHECK(slit < 0.8 * whole); // 0.734 of the drag is left, as `drop --slits 1` says
}

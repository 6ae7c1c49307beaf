// The window's face: first start, race, band of the answer, picture room, pour as a drawing.
#include "answers/ask/short_answer.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>

using namespace pourbook;
using testing::Desk;

namespace {

void begin_afresh(Desk& desk) {
    desk.session.view = first_view(testing::real_catalogue());
    desk.settle();
}

double place_drawn(const Desk& desk, const std::string& race, int lane) {
    const auto& items = desk.ui.probe.items();
    const Probe::Item tube = items.at(race + ".tube-" + std::to_string(lane)),
                      magnet = items.at(race + ".magnet-" + std::to_string(lane));
    return (magnet.y + magnet.height / 2 - tube.y) / tube.height;
}

void drag(Desk& desk, ImVec2 from, ImVec2 to) {
    ImGuiIO& io = ImGui::GetIO();
    io.MousePos = from;
    desk.frames(2);
    io.MouseDown[0] = true;
    desk.frames(2);
    io.MousePos = to;
    desk.frames(2);
    io.MouseDown[0] = false;
    desk.frames(2);
}

/// Width and height in a PNG's head.
std::pair<unsigned, unsigned> size_of_png(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    unsigned char head[24] = {};
    in.read(reinterpret_cast<char*>(head), sizeof head);
    const auto number = [&](int at) {
        return static_cast<unsigned>(head[at] << 24 | head[at + 1] << 16 | head[at + 2] << 8 | head[at + 3]);
    };
    return {number(16), number(20)};
}

} // namespace

TEST_CASE("the first start opens on the race of our own scenario, running, with four answered cards") {
    Desk desk(testing::real_catalogue());
    begin_afresh(desk);
    CHECK(desk.session.view.view == "start");
    CHECK(desk.session.view.pins.size() == 5);
    for (const std::string& pin : desk.session.view.pins) CHECK(pin.find("sterling") == std::string::npos);
    CHECK(desk.ui.moving);
    for (int i = 0; i < 4; ++i) CHECK(desk.text("start.card." + std::to_string(i) + ".answer").size() > 20);
    desk.click("start.card.1");
    desk.settle();
    CHECK(desk.session.view.view == "compare");
}

TEST_CASE("in every frame of a race each magnet stands where its fall was computed to have it") {
    Desk desk(testing::real_catalogue());
    begin_afresh(desk);
    const auto* falls = desk.session.drop.falls(desk.session.part_conditions());
    REQUIRE(falls);
    REQUIRE(*falls);
    double before = -1, first = -1;
    for (int frame = 0; frame < 90; ++frame) {
        desk.frames(1);
        const double time = std::stod(desk.text("start.race.time"));
        CHECK(time > before);
        if (first < 0) first = time;
        before = time;
        for (int lane = 0; lane < 5; ++lane) {
            const Race& race = desk.ui.races["start.race"].race;
            const RaceLane& l = race.lanes[static_cast<std::size_t>(lane)];
            CHECK(place_drawn(desk, "start.race", lane) ==
                  Approx(place_at(l, time).depth_m / l.tube_length_m).margin(2e-3));
        }
    }
    CHECK(before - first == Approx(89.0 / 60)); // true time
}

TEST_CASE("a race stops, goes on and begins again by its button and by Space and slow time is slow") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.session.view.drop.face = "race";
    desk.settle();
    RacePlay& play = desk.ui.races["drop.race"];
    CHECK_FALSE(play.running);
    desk.click("drop.race.go");
    CHECK(play.running);
    desk.tap(ImGuiKey_Space);
    CHECK_FALSE(play.running);
    desk.click("drop.race.pace.2");
    const double at = play.time_s;
    play.running = true;
    desk.frames(60);
    CHECK(play.time_s - at == Approx(1.0 / 20).margin(1e-6));
}

TEST_CASE("a tube's wall and length are dragged in the drawing") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.session.view.drop.face = "race";
    desk.settle();
    const Probe::Item tube = desk.ui.probe.items().at("drop.race.tube-0");
    const ImVec2 side{static_cast<float>(tube.x + tube.width), static_cast<float>(tube.y + tube.height / 2)};
    drag(desk, side, {side.x + 12, side.y});
    const std::string wider = desk.session.view.drop_setup.tube;
    CHECK(wider != "18mm:24mm:400mm");
    CHECK(wider.starts_with("18mm:"));
    CHECK(wider.ends_with(":400mm"));
    desk.settle();
    const Probe::Item now = desk.ui.probe.items().at("drop.race.tube-0");
    const ImVec2 foot{static_cast<float>(now.x + now.width / 2), static_cast<float>(now.y + now.height)};
    drag(desk, foot, {foot.x, foot.y - 60});
    CHECK_FALSE(desk.session.view.drop_setup.tube.ends_with(":400mm"));
}

TEST_CASE("liquid nitrogen shows before and after, with its cautions") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.session.view.drop.face = "race";
    desk.session.view.pins = {"copper", "aluminium-6061"};
    desk.settle();
    desk.click("drop.nitrogen");
    desk.settle();
    const Race& race = desk.ui.races["drop.race"].race;
    REQUIRE(race.lanes.size() == 4);
    CHECK(race.lanes[0].id == race.lanes[1].id);
    CHECK(race.lanes[1].path.back().time_s > race.lanes[0].path.back().time_s); // cold copper conducts better
    CHECK(desk.shows("drop.nitrogen.caution"));
}

TEST_CASE("the second set-up begins as a copy of the first, and what differs is said") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    desk.settle();
    desk.click("drop.against.1");
    CHECK(desk.session.view.drop.second == desk.session.view.drop_setup);
    CHECK(desk.text("drop2.differs").find("still a copy") != std::string::npos);
    desk.session.view.drop.second.tube = "18mm:30mm:400mm";
    desk.settle();
    CHECK(desk.text("drop2.differs").find("outside 30mm against 24mm") != std::string::npos);
}

TEST_CASE("every view says its answer in a sentence at the top, as the command line does") {
    Desk desk(testing::real_catalogue());
    for (const char* view : {"metals", "rank", "curves", "compare", "drop", "mix", "pour", "trials", "sources"}) {
        CAPTURE(view);
        desk.session.view.view = view;
        desk.settle();
        CHECK(desk.text("answer").size() > 20);
    }
    desk.session.view.view = "drop";
    desk.settle();
    const auto* falls = desk.session.drop.falls(desk.session.part_conditions());
    CHECK(desk.text("answer") == sentence_of(*(**falls).drops.front().result));
    desk.session.view.view = "compare";
    desk.settle();
    CHECK(desk.text("answer") == desk.text("versus.sentence"));
    CHECK(desk.shows("answer.sure"));
}

TEST_CASE("where a casting's figures and the handbook's stand in one view, each says which it is") {
    Desk desk(testing::real_catalogue());
    const auto state = [&](const char* view) {
        desk.session.view.view = view;
        desk.settle();
        return desk.text("answer.state");
    };
    CHECK(state("metals") == "handbook metal");
    CHECK(state("curves") == "handbook metal");
    CHECK(state("rank") == "casting");
    CHECK(state("drop") == "casting");
    CHECK(desk.text("drop.state") == "casting");
    CHECK(state("compare") == "casting"); // the duel; the table below is the handbook's
    CHECK(desk.text("compare.state") == "handbook metal");
    CHECK(desk.text("duel.words").find("castings") != std::string::npos);
    desk.session.view.view = "rank"; // evidence beside a ranking is of the figure that ranks
    desk.ui.evidence.show("za-12", "density");
    desk.settle();
    CHECK(desk.text("evidence.state").find("casting; handbook metal ") == 0);
    desk.session.view.view = "metals";
    desk.settle();
    CHECK(desk.text("evidence.state") == "handbook metal");
}

TEST_CASE("the picture room takes the picture of every view and writes frames of a video") {
    Desk desk(testing::real_catalogue());
    const auto folder = std::filesystem::temp_directory_path() / "pourbook-room-test";
    std::filesystem::create_directories(folder);
    for (const char* view : {"rank", "curves", "compare", "drop", "mix", "pour"}) {
        CAPTURE(view);
        desk.session.view.view = view;
        desk.session.view.drop.face = "race";
        desk.session.view.pour_face = "drawing";
        desk.settle();
        desk.ui.room.folder = folder.string();
        desk.press('E', true);
        desk.settle();
        REQUIRE(desk.shows("room"));
        desk.ui.room.file = std::string(view) + ".png";
        for (const int shape : {0, 1}) {
            desk.click("room.shape." + std::to_string(shape));
            desk.settle();
            desk.ui.room.warned_of = (folder / desk.ui.room.file).string();
            desk.click("room.save");
            desk.frames();
            CHECK(desk.text("room.told").find("saved as") != std::string::npos);
            const auto [width, height] = size_of_png((folder / desk.ui.room.file).string());
            CHECK(width == (shape == 0 ? 1920U : 1080U));
            CHECK(height == (shape == 0 ? 1080U : 1920U));
        }
        desk.click("room.shape.0");
        desk.click("room.close");
        desk.frames();
        CHECK_FALSE(desk.shows("room"));
    }
    std::filesystem::remove_all(folder);
}

TEST_CASE("a limit that a pour breaks is said, and the plan stays readable beside it") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "pour";
    desk.session.view.pour_face = "drawing";
    desk.session.view.pour.set("furnace-max", "500degC");
    desk.settle();
    CHECK(desk.text("pour.refused").find("furnace") != std::string::npos);
    CHECK(desk.text("pour.drawing.words").find("not enough") != std::string::npos);
}

TEST_CASE("the pouring mode counts the carry down and never shows without its cautions") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "pour";
    desk.session.view.pour_face = "drawing";
    desk.settle();
    desk.click("pour.mode");
    desk.frames();
    desk.click("pouring.30");
    CHECK(desk.text("pouring.clock") == "30 s");
    desk.click("pouring.go");
    desk.frames(130);
    CHECK(desk.ui.pouring.left_s == Approx(30 - 130.0 / 60).margin(0.2));
    desk.click("pouring.close");
    CHECK_FALSE(desk.ui.pouring.open);
}

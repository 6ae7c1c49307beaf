// Pictures in the frames of videos: letters a phone shows, nothing beyond the frame, title and credit as typed.
#include "charts/frame.hpp"
#include "charts/drop_charts.hpp"
#include "charts/duel.hpp"
#include "charts/glow.hpp"
#include "charts/pour_drawing.hpp"
#include "charts/race.hpp"
#include "charts/rank_chart.hpp"
#include "charts/table_picture.hpp"
#include "questions/rank/versus.hpp"
#include "support/small_catalogue.hpp"
#include "tests/charts/fixed_measure.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;

namespace {

std::string no_name(const std::string& key) {
    return key;
}

Scene in_frame(const SceneMaker& make, FrameShape shape) {
    static const testing::FixedMeasure measure;
    PictureWish wish;
    wish.shape = shape;
    wish.title = "A title of my own";
    wish.credit = "credit";
    return framed(make, wish, measure, "2026-11-30", no_name);
}

/// Of the texts that are there, in points.
double smallest_letters(const Scene& scene) {
    double least = scene.height;
    for (const auto& part : scene.parts)
        if (const Text* text = std::get_if<Text>(&part)) least = std::min(least, text_size(text->style));
    return least;
}

void check_frames(const char* what, const SceneMaker& make) {
    for (const FrameShape shape : {FrameShape::wide, FrameShape::tall, FrameShape::square, FrameShape::sheet}) {
        CAPTURE(what, static_cast<int>(shape));
        const Scene scene = in_frame(make, shape);
        const FrameSize size = frame_size(shape, 1080);
        CHECK(scene.width == Approx(size.width));
        CHECK(scene.height == Approx(size.height));
        if (shape != FrameShape::sheet) CHECK(smallest_letters(scene) >= scene.height / 45);
        const auto texts = testing::texts_of(scene);
        CHECK(std::any_of(texts.begin(), texts.end(), [](const auto& t) { return t.first == "credit"; }));
        double lowest = 0;
        for (const auto& [words, box] : texts) {
            CAPTURE(words);
            CHECK(box.x >= -1);
            CHECK(box.right() <= scene.width + 1);
            CHECK(box.y >= -1);
            CHECK(box.bottom() <= scene.height + 1);
            lowest = std::max(lowest, box.bottom());
        }
        CHECK(lowest > 0.9 * scene.height); // the picture fills its frame
    }
}

std::vector<DropOfMetal> sleeves() {
    DropRequest r;
    r.setup = {"cylinder:20mmx20mm", "N52", "", "", "", "", "", "22mm:38mm:300mm"};
    r.samples = 50;
    const auto drops = drop_in_each(testing::real_catalogue(), r, {"za-12", "aluminium-a356-cast", "copper-dhp"});
    REQUIRE(drops);
    return *drops;
}

} // namespace

TEST_CASE("pixels of a frame: 16:9 at 1080 is 1920 x 1080, upright 1080 x 1920") {
    const FrameSize wide = frame_size(FrameShape::wide, 1080), tall = frame_size(FrameShape::tall, 2160);
    CHECK(wide.width * wide.scale == Approx(1920));
    CHECK(wide.height * wide.scale == Approx(1080));
    CHECK(tall.width * tall.scale == Approx(2160));
    CHECK(tall.height * tall.scale == Approx(3840));
}

TEST_CASE("a race fits every frame") {
    const Race race = race_of(testing::real_catalogue(), sleeves(), UnitSystem::shown);
    check_frames("race", [&](const Canvas& canvas) { return race_scene(race, 1.2, 1, canvas); });
}

TEST_CASE("falls and drag fit every frame, and upright no name is cut") {
    const std::vector<DropOfMetal> drops = sleeves();
    const FallChart falls = fall_chart(testing::real_catalogue(), drops, UnitSystem::shown, {});
    const CurveChart drag = drag_chart(testing::real_catalogue(), drops, UnitSystem::shown);
    const std::vector<std::pair<const char*, SceneMaker>> kinds = {
        {"falls", [&](const Canvas& canvas) { return layout(falls, canvas); }},
        {"drag", [&](const Canvas& canvas) { return layout(drag, canvas); }}};
    for (const auto& [what, make] : kinds) {
        check_frames(what, make);
        const auto texts = testing::texts_of(in_frame(make, FrameShape::tall));
        for (const DropOfMetal& d : drops) {
            CAPTURE(what, d.metal->name);
            CHECK(std::any_of(texts.begin(), texts.end(), [&](const auto& t) { return t.first == d.metal->name; }));
        }
    }
}

TEST_CASE("a duel fits every frame and says who, by how much and why") {
    VersusRequest request;
    request.a = "bronze-silicon-cast";
    request.b = "bronze-gunmetal-88-10-2";
    request.goal.goal = "strongest-brake";
    const auto result = versus(testing::real_catalogue(), request);
    REQUIRE(result);
    const Duel duel = duel_of(testing::real_catalogue(), *result, 0, 1);
    CHECK(duel.better.name == result->better.metal->name);
    CHECK(duel.reason.starts_with(result->reason));
    check_frames("duel", [&](const Canvas& canvas) { return layout(duel, canvas); });
}

TEST_CASE("a table fits every frame and says what was left out") {
    TablePicture table{"Metals", {"metal", "density, g/cm³", "price, USD/kg"}, {false, true, true}, {}, {}};
    for (int i = 0; i < 60; ++i) table.rows.push_back({"metal " + std::to_string(i), "8.96", "9.70"});
    check_frames("table", [&](const Canvas& canvas) { return layout(table, canvas); });
    const auto texts = testing::texts_of(in_frame([&](const Canvas& c) { return layout(table, c); }, FrameShape::wide));
    CHECK(std::any_of(texts.begin(), texts.end(),
                      [](const auto& t) { return t.first.find("more rows") != std::string::npos; }));
}

TEST_CASE("in an upright frame a table keeps the names of its rows whole, and several columns") {
    TablePicture table{"Metals",
                       {"rank", "name", "of the best", "density, g/cm³", "price, USD/kg"},
                       {true, false, true, true, true},
                       {},
                       {}};
    for (int i = 0; i < 60; ++i)
        table.rows.push_back({std::to_string(i), "phosphorus-deoxidised copper, drawn", "0.94", "8.96", "9.70"});
    const auto texts = testing::texts_of(in_frame([&](const Canvas& c) { return layout(table, c); }, FrameShape::tall));
    const auto has = [&](const std::string& words) {
        return std::any_of(texts.begin(), texts.end(), [&](const auto& t) { return t.first == words; });
    };
    CHECK(has("5  phosphorus-deoxidised copper, drawn"));
    CHECK(has("8.96"));
    CHECK(has("9.70"));
    CHECK(
        std::none_of(texts.begin(), texts.end(), [](const auto& t) { return t.first.find("…") != std::string::npos; }));
}

TEST_CASE("a ranking fits every frame") {
    RankRequest request;
    request.goal.goal = "strongest-brake";
    request.samples = 200;
    const auto result = rank(testing::real_catalogue(), request);
    REQUIRE(result);
    const RankChart chart = rank_chart(testing::real_catalogue(), *result, UnitSystem::shown, {"za-12"});
    check_frames("rank", [&](const Canvas& canvas) { return layout(chart, canvas); });
}

TEST_CASE("a pour fits every frame, needed stands against mine") {
    Stated stated(pour_question());
    stated.set("metal", "za-12").set("part", "tube:22mm:38mm:300mm").set("clear", "20mm");
    const auto request = pour_request_from(stated, {}, testing::real_catalogue());
    REQUIRE(request);
    const auto plan = pour(testing::real_catalogue(), *request);
    REQUIRE(plan);
    casting::Workshop mine;
    mine.lift_maximum_kg = 0.5 * plan->charge.charge_kg;
    const PourDrawing drawing = pour_drawing(testing::real_catalogue(), *plan, mine, UnitSystem::shown);
    const auto lift =
        std::find_if(drawing.limits.begin(), drawing.limits.end(), [](const LimitBar& b) { return b.name == "lift"; });
    REQUIRE(lift != drawing.limits.end());
    CHECK(lift->share == Approx(2));
    CHECK(drawing.limits.front().mine.empty()); // nobody said what the furnace reaches
    CHECK(drawing.outside_m >= 0.038);
    CHECK(drawing.pattern_height_m > drawing.height_m);
    check_frames("pour", [&](const Canvas& canvas) { return layout(drawing, canvas); });
}

TEST_CASE("the glow is that of a black body") {
    // CIE 15:2018, illuminant A: x 0.44758, y 0.40745, a black body at 2856 K (from memory). The fit of the colour
    // matching is good to about 0.005.
    const Chromaticity a = black_body(2856);
    CHECK(a.x == Approx(0.44758).margin(0.006));
    CHECK(a.y == Approx(0.40745).margin(0.006));
    // The Planckian locus at 6500 K: x 0.3135, y 0.3237 (Wyszecki and Stiles, Color Science; from memory).
    const Chromaticity day = black_body(6500);
    CHECK(day.x == Approx(0.3135).margin(0.006));
    CHECK(day.y == Approx(0.3237).margin(0.006));
    const Colour red = glow(1000), yellow = glow(1500), cold = glow(700);
    CHECK(cold.red == 0);
    CHECK(red.red > 60);
    CHECK(red.red > 2 * red.green);
    CHECK(yellow.red == 255);
    CHECK(yellow.green > yellow.blue);
}

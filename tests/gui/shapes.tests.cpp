// Magnets, tubes and parts stated by their sizes, "now" pulled along a sweep, a race recorded, the tour of the help.
#include "answers/picture/film_writer.hpp"
#include "answers/picture/letters.hpp"
#include "charts/metal_colour.hpp"
#include "gui/state/shape_words.hpp"
#include "gui/state/window_words.hpp"
#include "questions/drop/film_question.hpp"
#include "questions/drop/setup_parts.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace pourbook;
using testing::Desk;

namespace {

Desk& shown(Desk& desk, const char* view) {
    desk.session.view.view = view;
    desk.settle();
    return desk;
}

std::string bytes_in(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

/// Pulls the line "now" of the sweep to a share of the plot's width.
void pull_now(Desk& desk, double to) {
    const Probe::Item box = desk.ui.probe.items().at("drop.sweep");
    const Plot plot = *desk.ui.scenes.at("drop.sweep").scene.plot;
    const std::optional<double> now = desk.ui.plots.at("drop.sweep").handle;
    REQUIRE(now);
    ImGuiIO& io = ImGui::GetIO();
    const float middle = static_cast<float>(box.y + plot.box.y + plot.box.height / 2);
    io.MousePos = {static_cast<float>(box.x + plot.x.place(*now)), middle};
    desk.frames(2);
    io.MouseDown[0] = true;
    desk.frames(2);
    io.MousePos.x = static_cast<float>(box.x + plot.box.x + to * plot.box.width);
    desk.frames(2);
    io.MouseDown[0] = false;
    desk.frames(2);
    desk.settle();
}

double metres(const eddy::Uncertain& u) {
    return u.value;
}

} // namespace

TEST_CASE("a shape's words are taken apart into its sizes and put together again") {
    const std::pair<const char*, const char*> cases[] = {
        {"magnet", "cylinder:20mmx20mm"}, {"magnet", "sphere:12+-0.1mm"},   {"magnet", "ring:25.4mmx9.5mmx10mm"},
        {"tube", "22mm:38mm:300mm"},      {"part", "tube:22mm:38mm:300mm"}, {"part", "plate:100mmx60mmx6mm"},
        {"part", "cone:40mm:20mm:80mm"},  {"part", "stl:/tmp/a part.stl"}};
    for (const auto& [field, words] : cases) {
        CAPTURE(field, words);
        const auto parts = shape_parts(shape_forms(field), words);
        REQUIRE(parts);
        CHECK(shape_words(shape_forms(field)[parts->form], parts->sizes) == words);
    }
    CHECK(shape_parts(shape_forms("part"), "tube:22:38:300mm")->sizes ==
          std::vector<std::string>{"22mm", "38mm", "300mm"});                          // one unit serves them all
    CHECK_FALSE(shape_parts(shape_forms("magnet"), "2 x cylinder:12mmx10mm opposed")); // a stack stays words
    CHECK(shape_words(shape_forms("magnet").front(), {"", ""}).empty());
    CHECK(shape_forms("grade").empty());
}

TEST_CASE("a part of Pour is stated by its sizes, a bare number in millimetres, another form keeps what it shares") {
    Desk desk(testing::real_catalogue(), 1440, 2400);
    shown(desk, "pour");
    CHECK(desk.text("pour.part.0.outside") == "24");
    desk.fill("pour.part.0.outside", "30");
    CHECK(desk.session.view.pour.text("part") == "tube:18mm:30mm:400mm");
    desk.fill("pour.part.0.bore", "40"); // wider than the outside
    CHECK(desk.text("pour.part.0.fault").find("bore") != std::string::npos);
    desk.fill("pour.part.0.bore", "1/2 in");
    CHECK_FALSE(desk.shows("pour.part.0.fault"));
    desk.click("pour.part.0.form");
    desk.click("pour.part.0.form.bar");
    desk.settle();
    CHECK(desk.session.view.pour.text("part") == "bar:20mmx400mm");
    CHECK_FALSE(desk.shows("pour.stl-unit")); // only of a drawing
}

TEST_CASE("magnet and tube of every question have a field for each size") {
    Desk desk(testing::real_catalogue(), 1440, 1600);
    desk.session.view.questions.question = "drag";
    shown(desk, "questions");
    desk.fill("drag.magnet.diameter", "12");
    desk.fill("drag.tube.bore", "14");
    const Stated& stated = desk.session.view.questions.stated.at("drag");
    CHECK(stated.text("magnet") == "cylinder:12mmx15mm");
    CHECK(stated.text("tube") == "14mm:24mm:400mm");
}

TEST_CASE("what the command line says is said in the window without its options") {
    CHECK(in_window("weigh it and give --magnet-mass") == "weigh it and give magnet mass");
    CHECK(in_window("A beats B. Handbook metal: --as handbook. Figures: C.") == "A beats B. Figures: C.");
    CHECK(in_window("as cast; handbook metal: --as handbook") == "as cast");
    CHECK(in_window("1.30+-0.02T at 20 degC") == "1.30±0.02T at 20 °C");
    CHECK(in_window("a -- b, well-known") == "a -- b, well-known");
    Desk desk(testing::real_catalogue());
    for (const char* view : {"rank", "compare", "drop", "pour", "mix"}) {
        CAPTURE(view);
        shown(desk, view);
        CHECK(in_window(desk.text("answer")).find("--") == std::string::npos);
    }
}

TEST_CASE("now is pulled along a sweep over wall, length and temperature") {
    Desk desk(testing::real_catalogue());
    desk.session.view.drop.face = "charts";
    shown(desk, "drop");
    pull_now(desk, 0.5);
    const Plot plot = *desk.ui.scenes.at("drop.sweep").scene.plot;
    CHECK(plot.x.share(*desk.ui.plots.at("drop.sweep").handle) == Approx(0.5).margin(0.02));
    const Result<DropSetup> setup = drop_setup(desk.session.catalogue, desk.session.view.drop_setup);
    REQUIRE(setup);
    const double wall_mm = 1000 * (metres(setup->inputs.outside_radius_m) - metres(setup->inputs.bore_radius_m));
    CHECK(wall_mm == Approx(*desk.ui.plots.at("drop.sweep").handle).margin(0.06));
    CHECK(parts_of_tube(desk.session.view.drop_setup.tube).bore == "18mm");
    desk.click("drop.over.2");
    desk.settle();
    pull_now(desk, 0.75);
    const double wanted_mm = desk.ui.scenes.at("drop.sweep").scene.plot->x.at_share(0.75);
    const std::string length = parts_of_tube(desk.session.view.drop_setup.tube).length;
    CHECK(std::stod(length) == Approx(wanted_mm).margin(2.6)); // in steps of 5 mm
    desk.click("drop.over.3");
    desk.settle();
    pull_now(desk, 0.5);
    CHECK(desk.session.conditions().temperature_K ==
          Approx(desk.ui.scenes.at("drop.sweep").scene.plot->x.at_share(0.5)).margin(2));
}

TEST_CASE("a race is recorded from the picture room as the frames that the command writes") {
    Desk desk(testing::real_catalogue());
    const Catalogue& catalogue = testing::real_catalogue();
    const SetupWords setup = {"cylinder:15mmx15mm", "N42", "", "", "", "", "", "18mm:20mm:60mm"};
    desk.session.view.drop_setup = setup;
    desk.session.view.pins = {"brass-cartridge"};
    desk.session.view.marks.of = {{"brass-cartridge", 0}};
    desk.session.view.drop.face = "race";
    shown(desk, "drop");
    const auto folder = std::filesystem::temp_directory_path() / "pourbook-record-test";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    desk.ui.room.folder = folder.string();
    desk.press('E', true);
    desk.settle();
    desk.click("room.record");
    for (int i = 0; i < 400 && desk.shows("room.recording"); ++i) desk.frames(1);
    REQUIRE(desk.text("room.told").find("saved") != std::string::npos);
    const auto frames = folder / "a-magnet-falls-through-a-tube-frames";

    Stated stated(film_question());
    stated.set("magnet", setup.magnet)
        .set("grade", setup.grade)
        .set("tube", setup.tube)
        .set("metal", "brass-cartridge");
    const auto falls = film_falls(stated, catalogue);
    REQUIRE(falls);
    const Race race = race_of(catalogue, *falls, UnitSystem::shown);
    FilmLook look;
    look.source_name = [&](const std::string& key) { return short_source(catalogue, key); };
    const Film film(race, look, **letters());
    std::size_t written = 0;
    for (const auto& file : std::filesystem::directory_iterator(frames)) written += file.is_regular_file() ? 1 : 0;
    CHECK(written == film.frames());
    PictureLook picture;
    picture.scale = film.scale();
    picture.ground = palette(true).ground;
    for (const std::size_t frame : {std::size_t{0}, std::size_t{33}, std::size_t{40}, film.frames() - 1}) {
        CAPTURE(frame);
        const Result<std::string> wanted = picture_of(film.scene(frame), PictureFormat::png, picture);
        REQUIRE(wanted);
        CHECK((bytes_in(frames / FilmWriter::file_name(frame)) == *wanted));
    }
    std::filesystem::remove_all(folder);
}

TEST_CASE("each step of the tour is one click, and its page stays beside the step") {
    Desk desk(testing::real_catalogue(), 1440, 1500); // high enough for the whole page
    desk.session.view.help = true;
    for (const char* step : {"rank", "compare", "drop", "pour", "mix", "trials"}) {
        CAPTURE(step);
        if (!desk.shows("help.tour.leave")) shown(desk, "start");
        desk.click(std::string("help.go.view.") + step);
        desk.settle();
        CHECK(desk.session.view.view == step);
        CHECK(desk.text("help.page") == "start");
    }
    desk.click("help.tour.leave");
    desk.frames();
    CHECK(desk.text("help.page") == "trials");
}

TEST_CASE("evidence is opened and led to another figure without a pointer") {
    Desk desk(testing::real_catalogue());
    desk.session.view.selected = "copper";
    shown(desk, "metals");
    desk.press('I', true);
    desk.settle();
    CHECK(desk.text("evidence.of") == "copper.conductivity");
    CHECK(desk.session.view.view == "metals");
    desk.click("evidence.property");
    desk.click("evidence.property.density");
    desk.settle();
    CHECK(desk.text("evidence.of") == "copper.density");
    desk.press('I', true);
    desk.frames();
    CHECK_FALSE(desk.shows("evidence.of"));
}

TEST_CASE("a metal's own colour is published for the pure ones and lies between them for alloys of copper") {
    const Catalogue& catalogue = testing::real_catalogue();
    const auto of = [&](const char* slug) { return metal_colour(*catalogue.metal(slug)); };
    const auto yellow = [&](const char* slug) { return of(slug).red - of(slug).blue; };
    CHECK(static_cast<int>(of("copper").green) == 216); // notes on material properties of Filament: 251,216,184
    CHECK(static_cast<int>(of("silver").blue) == 245);  // the same table: 250,249,245
    CHECK(static_cast<int>(of("gold").blue) == 157);    // the same table: 255,220,157
    CHECK(yellow("brass-cartridge") > yellow("silver"));
    CHECK(of("brass-cartridge").green > of("copper").green);
}

// The window offers every field and every question that the command line has: both are made from the same tables, and
// here every field of every table is looked for on the screen.
#include "answers/askers.hpp"
#include "gui/state/view_file.hpp"
#include "questions/metals/conditions.hpp"
#include "questions/views.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace pourbook;
using testing::Desk;

namespace {

constexpr double tall = 3200; // nothing has to be scrolled to

bool shows_field(Desk& desk, const QuestionTable& question, const QuestionField& field) {
    const std::string id = question.name + "." + field.name;
    return desk.shows(id) || desk.shows(id + ".add");
}

} // namespace

TEST_CASE("every field of every question that the command line answers in words has its place in All questions") {
    Desk desk(testing::real_catalogue(), 1440, tall);
    desk.session.view.view = "questions";
    desk.settle();
    for (const Asker& asker : askers()) {
        CAPTURE(asker.question->name);
        REQUIRE(desk.shows("questions." + asker.question->name));
        desk.session.view.questions.question = asker.question->name;
        desk.settle();
        for (const QuestionField& field : asker.question->fields) {
            CAPTURE(field.name);
            if (field.place != everywhere) CHECK(shows_field(desk, *asker.question, field));
        }
    }
}

TEST_CASE("every field of a plan has its place in Pour") {
    Desk desk(testing::real_catalogue(), 1440, tall);
    desk.session.view.view = "pour";
    desk.session.view.pour.set("part", "stl:/tmp/part.stl"); // a drawing has a unit
    desk.settle();
    for (const QuestionField& field : pour_question().fields) {
        CAPTURE(field.name);
        if (field.place != everywhere) CHECK(shows_field(desk, pour_question(), field));
    }
}

TEST_CASE("the conditions of every question are stated at the top: temperature, condition or temper, prices, purity") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    CHECK(desk.shows("temperature"));
    desk.click("condition");
    desk.frames();
    for (const char* id :
         {"condition.annealed", "conditions.condition", "conditions.price-form.retail", "conditions.purity-rrr"})
        CHECK(desk.shows(id));
    desk.click("conditions.price-form.retail");
    desk.settle();
    CHECK(desk.session.conditions().price_form == "retail");
    CHECK(desk.session.rank_request().conditions.price_form == "retail");
}

TEST_CASE(
    "prices in the window follow the form that is chosen: Drop's tube at retail costs more than at the exchange") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "drop";
    const auto cost = [&] {
        desk.settle();
        const auto* falls = desk.session.drop.falls(desk.session.part_conditions());
        REQUIRE(falls);
        REQUIRE(*falls);
        return (**falls).drops.front().result->cost_usd;
    };
    const double exchange = cost();
    desk.session.view.conditions.set("price-form", "retail");
    const double retail = cost();
    CHECK(retail > exchange * 1.5);
}

TEST_CASE("a plate and readings are answered in All questions as on the command line") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "questions";
    desk.session.view.questions.question = "plate";
    desk.settle();
    CHECK(desk.text("questions.missing").find("thickness") != std::string::npos);
    const Asker& plate = *asker("plate");
    Stated& stated = stated_for(desk.session.view, *plate.question);
    stated.set("metal", "copper").set("thickness", "5mm").set("gap", "2mm").set("speed", "0.5m/s");
    desk.settle();
    const Result<std::string> words = plate.text(desk.session.asked(stated), desk.session.asking());
    REQUIRE(words);
    CHECK(desk.text("questions.words") == *words);
    desk.session.view.questions.question = "measure";
    stated_for(desk.session.view, *asker("measure")->question).set("field", "0.21T@5mm");
    desk.settle();
    CHECK_FALSE(desk.text("questions.words").empty());
}

TEST_CASE("every view of the table is drawn, and none that the table doesn't know") {
    CHECK(std::size(drawn_views) == view_names.size());
    for (const DrawnView& view : drawn_views) CHECK(is_view(view.name));
}

TEST_CASE("what is stated in All questions and at the top comes back from the state file") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "questions";
    stated_for(desk.session.view, *asker("plate")->question).set("gap", "3mm");
    desk.session.view.conditions.set("at", "77 K").set("price-form", "scrap");
    const std::string file = (std::filesystem::temp_directory_path() / "pourbook-fields-state.json").string();
    REQUIRE_FALSE(write_view(file, desk.session.view));
    const KeptView back = read_view(file, ViewState{});
    std::filesystem::remove(file);
    CHECK(back.remark.empty());
    CHECK(back.view == desk.session.view);
}

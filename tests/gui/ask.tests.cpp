// The one field at the top: questions open the right view filled in, with the command line's sentence.
#include "answers/ask/ask_report.hpp"
#include "tests/gui/desk.hpp"
#include "tests/support/asked_questions.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

void ask_in(Desk& desk, const std::string& words) {
    desk.press('K', true);
    desk.frames();
    desk.press('A', true);
    ImGui::GetIO().AddInputCharactersUTF8(words.c_str()); // at once: "°" is two bytes, one sign
    desk.settle();
}

std::string view_for(Asked asked, std::size_t metals) {
    if (asked == Asked::value) return metals > 1 ? "compare" : "metals";
    if (asked == Asked::versus) return "compare";
    if (asked == Asked::rank) return "rank";
    if (asked == Asked::drop) return "drop";
    if (asked == Asked::pour) return "pour";
    if (asked == Asked::mix) return "mix";
    return asked == Asked::defect ? "trials" : "metals";
}

/// What the opened view was filled in with.
void check_filled_in(const ViewState& view, const QuestionRead& read) {
    for (const std::string& slug : read.metals)
        CHECK((view.selected == slug || is_pinned(view, slug) || view.pour.text("metal") == slug));
    if (!read.goal.empty() && (read.asked == Asked::versus || read.asked == Asked::rank))
        CHECK(view.rank.goal == read.goal);
    if (read.asked == Asked::versus) CHECK(view.versus == VersusChoice{read.metals[0], read.metals[1]});
    if (read.asked == Asked::rank) CHECK(view.rank.on_shelf == read.from_shelf);
    if (!read.magnet.empty()) CHECK(view.drop_setup.magnet == read.magnet);
    if (!read.tube.empty()) CHECK(view.drop_setup.tube == read.tube);
    if (!read.part.empty()) CHECK(view.pour.text("part") == read.part);
    if (!read.at.empty()) CHECK(view.conditions.text("at") == read.at);
    if (read.asked == Asked::mix) CHECK(view.mix.words.stocks.size() == 2);
}

} // namespace

TEST_CASE("sixty questions typed into Ask open the right view filled in, with the command line's sentence") {
    const Catalogue& catalogue = testing::real_catalogue();
    Desk desk(catalogue);
    const ViewState start = desk.session.view;
    for (const auto& [words, command] : testing::asked_questions) {
        CAPTURE(words);
        desk.session.view = start;
        const Result<AskResult> told = ask(catalogue, {words, {}});
        REQUIRE(told);
        ask_in(desk, words);
        CHECK(desk.text("ask.sentence") == sentence_of(*told, UnitSystem::shown));
        CHECK(desk.text("ask.fault") == told->fault);
        desk.tap(ImGuiKey_Enter);
        desk.settle();
        CHECK(desk.session.view.view == view_for(told->read.asked, told->read.metals.size()));
        check_filled_in(desk.session.view, told->read);
    }
}

TEST_CASE("Compare says what Ask said, about the metals and the goal that were asked for") {
    Desk desk(testing::real_catalogue());
    ask_in(desk, "is silver a better brake than copper at 77 K");
    const std::string said = desk.text("ask.sentence");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.text("versus.sentence") == said);
}

TEST_CASE("Ask finds metals, goals, views, faults of castings, help, sources and commands by their names") {
    Desk desk(testing::real_catalogue());
    const std::pair<const char*, const char*> cases[] = {{"rank", "view: Rank"},
                                                         {"undo", "command: Undo"},
                                                         {"matula", "source: Matula 1979"},
                                                         {"cold shut", "opens: Trials"},
                                                         {"help pour", "help: Help: pour"},
                                                         {"-196 C", "temperature: at -196C"},
                                                         {"gunmetal", "opens: Metals"},
                                                         {"strongest", "goal: strongest brake"}};
    for (const auto& [words, first] : cases) {
        CAPTURE(words);
        ask_in(desk, words);
        bool there = false;
        for (int i = 0; i < 8 && desk.shows("ask.entry." + std::to_string(i)); ++i)
            there = there || desk.text("ask.entry." + std::to_string(i)) == first;
        CHECK(there);
        desk.tap(ImGuiKey_Escape);
        desk.frames();
        CHECK_FALSE(desk.session.passing.ask.open);
    }
}

TEST_CASE("a command, a view and a temperature are taken from Ask by Return, an entry by a click, arrows move") {
    Desk desk(testing::real_catalogue());
    ask_in(desk, "compare");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.view.view == "compare");
    ask_in(desk, "liquid nitrogen");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.conditions().temperature_K == Approx(77.355));
    ask_in(desk, "gunmetal");
    desk.click("ask.entry.1");
    desk.settle();
    CHECK(desk.session.view.view != "compare");
    CHECK_FALSE(desk.session.passing.ask.open);
    ask_in(desk, "zinc");
    desk.tap(ImGuiKey_DownArrow);
    CHECK(desk.session.passing.ask.at == 1);
    desk.tap(ImGuiKey_UpArrow);
    CHECK(desk.session.passing.ask.at == 0);
}

TEST_CASE("Return pressed before the answer is there opens it when it comes and what nothing is called opens nothing") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    desk.press('K', true);
    desk.frames();
    desk.type("strongest brake");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.view.rank.goal == "strongest-brake");
    const std::string before = desk.session.view.view;
    ask_in(desk, "qqq xyzzy");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.view.view == before);
}

#include "gui/actions/actions.hpp"
#include "questions/views.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

void draw_all(const Catalogue& catalogue, double width, double height, float scale) {
    Desk desk(catalogue, width, height, scale);
    for (const ViewName& named : view_names)
        for (const bool dark : {true, false}) {
            const char* view = named.name;
            CAPTURE(view, dark);
            desk.session.view.view = view;
            desk.session.view.dark = dark;
            desk.settle();
            CHECK(desk.text("view") == view);
            CHECK(ImGui::GetDrawData()->TotalVtxCount > 100);
        }
}

} // namespace

TEST_CASE("every view draws with an empty, a small and the real reference") {
    Catalogue empty;
    empty.index();
    draw_all(empty, 1280, 720, 1);
    draw_all(testing::small_catalogue(), 1280, 720, 1);
    draw_all(testing::real_catalogue(), 1440, 900, 1);
    draw_all(testing::real_catalogue(), 2560, 1440, 2);
    draw_all(testing::real_catalogue(), 400, 300, 1); // too small to read, but not wrong
}

TEST_CASE("the first start shows an answered question") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    CHECK(desk.text("view") == "rank");
    CHECK(desk.text("goal") == "braking-per-cost");
    CHECK(desk.shows("pin.copper"));
    CHECK(desk.shows("rank.row.1"));
    CHECK(desk.shows("rank.1.median"));
}

TEST_CASE("the ranking on screen is the ranking of the use case") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    RankRequest request;
    request.goal.goal = "braking-per-cost";
    request.conditions.casting.emplace(); // for the part as cast, where nothing else is asked
    const Result<RankResult> result = rank(testing::real_catalogue(), request);
    REQUIRE(result);
    for (std::size_t i = 0; i < 10; ++i)
        CHECK(desk.text("rank.row." + std::to_string(i + 1)) == result->ranked[i].metal->slug);
    CHECK(desk.text("excluded") == std::to_string(result->excluded.size()));
}

TEST_CASE("a click on a ranked row pins the metal, a click on its cross unpins it") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    const std::string slug = desk.text("rank.row.2");
    REQUIRE_FALSE(is_pinned(desk.session.view, slug));
    desk.click("rank.row.2");
    CHECK(is_pinned(desk.session.view, slug));
    desk.click("unpin." + slug);
    CHECK_FALSE(is_pinned(desk.session.view, slug));
}

TEST_CASE("the hover of a number names its source and how it is known") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "metals";
    desk.session.view.selected = "copper";
    desk.settle();
    desk.point_at("sheet.resistivity");
    const std::string hover = desk.text("hover");
    CHECK(hover.find("Matula 1979") != std::string::npos);
    CHECK(hover.find("±") != std::string::npos);
    desk.click("sheet.resistivity");
    desk.settle();
    CHECK(desk.text("evidence.of") == "copper.resistivity");
    desk.click("evidence.source.0.open");
    desk.settle();
    CHECK(desk.text("view") == "sources");
    CHECK(desk.text("source.shown") == "matula-1979");
}

TEST_CASE("a missing value says why") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "metals";
    desk.session.view.selected = "copper";
    desk.session.view.conditions.set("at", "9000 K");
    desk.settle();
    CHECK(desk.text("sheet.resistivity") == "no value");
    desk.point_at("sheet.resistivity");
    CHECK(desk.text("hover").find("outside the cited range") != std::string::npos);
}

TEST_CASE("a text that can't be read stays in its field with the reason, and the earlier value in force") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    desk.click("temperature");
    desk.press('A', true);
    desk.type("warm");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.text("temperature") == "warm");
    CHECK(desk.shows("temperature.fault"));
    CHECK(desk.session.conditions().temperature_K == 293.15);
    desk.click("temperature");
    desk.press('A', true);
    desk.type("77 K");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK_FALSE(desk.shows("temperature.fault"));
    CHECK(desk.session.conditions().temperature_K == Approx(77));
}

TEST_CASE("a formula of one's own is ranked, and a broken one names its column") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.goal.clear();
    desk.session.view.rank.formula = "thermal_conductivity";
    desk.settle();
    const std::string best = desk.text("rank.row.1");
    desk.click("formula");
    desk.press('A', true);
    desk.type("thermal_conductivty");
    CHECK(desk.text("formula.fault").find("column 1") != std::string::npos);
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.text("rank.row.1") == best);
    desk.click("best.1");
    desk.settle();
    CHECK(desk.text("rank.row.1") != best);
}

TEST_CASE("what is held equal is part of the question") {
    Desk desk(testing::real_catalogue());
    desk.session.view.rank.goal = "strongest-brake";
    desk.settle();
    const std::string best = desk.text("rank.row.1");
    desk.click("holding.2");
    CHECK(desk.session.goal_words().holding == Holding::budget);
    desk.settle();
    CHECK(desk.text("rank.row.1") != best);
}

TEST_CASE("Compare sets the first two pinned metals against each other, or the two chosen") {
    Desk desk(testing::real_catalogue());
    desk.session.view.pins = {"copper", "zinc", "tin"};
    desk.session.view.view = "compare";
    desk.settle();
    CHECK(desk.text("versus.first") == "copper");
    CHECK(desk.text("versus.second") == "zinc");
    const std::string sentence = desk.text("versus.sentence");
    desk.click("versus.second");
    desk.click("versus.second.tin");
    desk.settle();
    CHECK(desk.text("versus.second") == "tin");
    CHECK(desk.text("versus.sentence") != sentence);
    desk.session.view.pins = {"tin"};
    desk.settle();
    CHECK_FALSE(desk.shows("versus.sentence"));
}

TEST_CASE("a curve is drawn for each pinned metal and answers the pointer") {
    Desk desk(testing::real_catalogue());
    desk.session.view.view = "curves";
    desk.settle();
    CHECK(desk.text("curve.copper").find("stretches") != std::string::npos);
    desk.point_at("curve.chart.copper.1");
    CHECK(desk.text("hover").find("copper") == 0);
}

TEST_CASE("an idle frame works out nothing anew and draws what the one before drew") {
    Desk desk(testing::real_catalogue());
    const auto answers = [&] {
        const Session& s = desk.session;
        return std::vector<std::size_t>{s.ranking_serial(), s.tradeoff_serial(), s.curves_serial(), s.mix_serial()};
    };
    for (const ViewName& named : view_names) {
        const char* view = named.name;
        desk.session.view.view = view;
        desk.settle();
        const std::vector<std::size_t> before = answers();
        const int vertices = ImGui::GetDrawData()->TotalVtxCount;
        for (int i = 0; i < 20; ++i) {
            desk.frames(1);
            CAPTURE(view, i);
            CHECK_FALSE(desk.session.working());
            CHECK(ImGui::GetDrawData()->TotalVtxCount == vertices);
        }
        CHECK(answers() == before);
    }
}

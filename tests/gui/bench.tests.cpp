// The workshop as a bench: grids that keep what is left in a cell, one undo, what is kept where it arises.
#include "gui/state/pasted.hpp"
#include "tests/gui/desk.hpp"
#include "tests/gui/shop.hpp"

#include <catch2/catch.hpp>

#include <map>

using namespace pourbook;
using testing::Desk;

namespace {

void show(Desk& desk, const char* view) {
    desk.session.view.view = view;
    desk.settle();
}

} // namespace

TEST_CASE("rows of a spreadsheet become lots, with or without a head") {
    const Kind& stock = known_kind("stock");
    const auto named = entries_from_paste(stock, "weight\tmetal\r\n2 kg\tcopper\r\n300 g\ttin\n");
    REQUIRE(named);
    REQUIRE(named->size() == 2);
    CHECK(text_of(stock, (*named)[0], "mass") == "2 kg");
    CHECK(text_of(stock, (*named)[1], "metal") == "tin");
    const auto bare = entries_from_paste(stock, "zinc\t1 kg\t3 USD/kg\n");
    REQUIRE(bare);
    CHECK(text_of(stock, bare->front(), "price") == "3 USD/kg");
    CHECK_FALSE(entries_from_paste(stock, "\n\n"));
    CHECK_FALSE(entries_from_paste(stock, "a\tb\tc\td\te\tf\tg\th\n"));
}

namespace {

struct WorkshopDeskOf : testing::Shop {
    Desk desk{testing::real_catalogue(), 1440, 1200, 1, workshop.get()};
    std::size_t lots() { return workshop->entries(known_kind("stock"))->size(); }
};

} // namespace

TEST_CASE("a cell of the grid is kept when it is left, and one undo takes back whatever was done last") {
    WorkshopDeskOf bench;
    Desk& desk = bench.desk;
    show(desk, "trials");
    desk.click("bench.shelf");
    desk.settle();
    desk.fill("grid.stock.new.metal", "copper");
    CHECK(bench.lots() == 0);
    desk.fill("grid.stock.new.mass", "2 kg");
    CHECK(bench.lots() == 1);
    CHECK(desk.text("told").find("kept: stock") == 0);
    desk.fill("grid.stock.1.mass", "3 kg");
    CHECK(text_of(known_kind("stock"), bench.workshop->entries(known_kind("stock"))->front(), "mass") == "3 kg");
    desk.press('U', true); // a choice of the window
    desk.settle();
    desk.press('Z', true);
    desk.settle();
    CHECK(desk.text("told").find("a choice in the window") != std::string::npos);
    CHECK(text_of(known_kind("stock"), bench.workshop->entries(known_kind("stock"))->front(), "mass") == "3 kg");
    desk.press('Z', true);
    desk.settle();
    CHECK(desk.text("told").find("taken back: edit stock") != std::string::npos);
    CHECK(text_of(known_kind("stock"), bench.workshop->entries(known_kind("stock"))->front(), "mass") == "2 kg");
}

TEST_CASE("pasted rows are one change") {
    WorkshopDeskOf bench;
    Desk& desk = bench.desk;
    show(desk, "trials");
    desk.click("bench.shelf");
    desk.settle();
    ImGui::SetClipboardText("metal\tmass\tprice\ncopper\t2 kg\t9 USD/kg\ntin\t1 kg\t\n");
    desk.click("grid.stock.paste");
    desk.settle();
    CHECK(bench.lots() == 2);
    desk.press('Z', true);
    desk.settle();
    CHECK(bench.lots() == 0);
}

TEST_CASE("a formula is kept where it is typed, under a name as people write it") {
    WorkshopDeskOf bench;
    Desk& desk = bench.desk;
    desk.session.view.rank.goal.clear();
    show(desk, "rank");
    desk.click("formula.name");
    desk.type("Heat per Euro");
    desk.click("formula.keep");
    desk.settle();
    const auto goals = bench.workshop->entries(known_kind("goal"));
    REQUIRE(goals);
    REQUIRE(goals->size() == 1);
    CHECK(text_of(known_kind("goal"), goals->front(), "name") == "heat-per-euro");
    CHECK(text_of(known_kind("goal"), goals->front(), "sentence") == "Heat per Euro");
}

TEST_CASE("a fall set up in Drop becomes a trial, and what it measured is a picture beside one's own metals") {
    WorkshopDeskOf bench;
    Desk& desk = bench.desk;
    testing::put(*bench.workshop, "stock", {{"lot", "pipe"}, {"metal", "copper"}, {"mass", "2 kg"}});
    show(desk, "drop");
    desk.click("drop.keep");
    desk.settle();
    CHECK(desk.session.view.view == "trials");
    CHECK(desk.text("field.metal") == desk.session.drop.metal());
    desk.fill("field.times", "12.0 s, 12.3 s");
    desk.click("entry.keep");
    desk.settle();
    const std::string sentence = desk.text("trial.trial-1.sentence");
    CHECK(sentence.find("%IACS") != std::string::npos);
    CHECK(desk.shows("measured.trial-1.copper.0"));
}

TEST_CASE("each row of a ranking says whose price it rests on") {
    WorkshopDeskOf bench;
    Desk& desk = bench.desk;
    testing::put(*bench.workshop, "stock",
                 {{"lot", "pipe"}, {"metal", "copper"}, {"mass", "2 kg"}, {"price", "9 USD/kg"}});
    testing::put(*bench.workshop, "stock", {{"lot", "bar"}, {"metal", "tin"}, {"mass", "2 kg"}});
    desk.session.view.rank.on_shelf = true;
    show(desk, "rank");
    std::map<std::string, std::string> whose;
    for (const char* row : {"1", "2"})
        whose[desk.text(std::string("rank.row.") + row)] = desk.text(std::string("rank.") + row + ".whose");
    CHECK(whose["copper"] == "paid");
    CHECK(whose["tin"] == "exchange");
}

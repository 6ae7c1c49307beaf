// The window's money: in the currency of the profile, by its rate, and the same as the command line tells.
#include "answers/writers/documents.hpp"
#include "answers/writers/writers.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/drop_figures.hpp"
#include "tests/gui/desk.hpp"
#include "tests/gui/shop.hpp"

using namespace pourbook;
using testing::Desk;
using testing::put;
using testing::Shop;

namespace {

constexpr const char* rate_words = "1.25 USD/EUR, central bank, 2026-11-02"; // invented

struct EuroShop : Shop {
    EuroShop() {
        put(*workshop, "profile", {{"currency", "EUR"}});
        put(*workshop, "rate",
            {{"currency", "EUR"}, {"usd", "1.25"}, {"date", "2026-11-02"}, {"source", "central bank"}});
    }
    Desk desk{testing::real_catalogue(), 1440, 900, 1, workshop.get()};
};

/// The row of a metal in the text that `rank` prints.
std::string row_of(const std::string& told, const std::string& slug) {
    const std::size_t name = told.find(" " + slug + " "), start = told.rfind('\n', name) + 1;
    REQUIRE(name != std::string::npos);
    return told.substr(start, told.find('\n', name) - start);
}

bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("Rank's tubes cost what the command line says, in the profile's currency and units") {
    EuroShop shop;
    Desk& desk = shop.desk;
    desk.session.view.rank.goal = "longest-fall";
    desk.session.view.rank.only_pinned = true; // few metals: quick
    for (const UnitSystem units : {UnitSystem::shown, UnitSystem::workshop}) {
        desk.session.view.workshop_units = units == UnitSystem::workshop;
        desk.settle();
        const RankResult& result = **desk.session.ranking();
        const std::string told = answer_text(document_of(result, {desk.session.catalogue, units, ""}));
        const RankedMetal& first = result.ranked.front();
        const std::string row = row_of(told, first.metal->slug);
        CHECK(desk.text("rank.1.cost") == significant(first.tube->cost_usd / 1.25, 3));
        for (const char* id : {"rank.1.mass", "rank.1.cost"}) CHECK(contains(row, " " + desk.text(id) + " "));
        CHECK(contains(told, rate_words));
    }
}

TEST_CASE("Rank's budget and the sweep over money begin, read and answer in the profile's currency") {
    EuroShop shop;
    Desk& desk = shop.desk;
    desk.session.view.rank.goal = "longest-fall";
    desk.session.view.rank.holding = "budget";
    desk.session.view.rank.only_pinned = true;
    desk.settle();
    CHECK(desk.text("fall.budget") == "20 EUR");                     // 20 USD / 1.25, to one figure
    CHECK((*desk.session.ranking())->fall->held_si() == Approx(25)); // 20 x 1.25
    desk.fill("fall.budget", "20 GBP");                              // no rate for it
    CHECK(contains(desk.text("fall.budget.fault"), "no rate of exchange for GBP"));
    CHECK(desk.session.view.rank.budget == "20 EUR");

    desk.session.view.view = "drop";
    desk.settle();
    desk.click("drop.over.4");
    desk.settle();
    CHECK(desk.text("drop.range") == "0.8EUR:40EUR"); // 1 and 50 USD / 1.25
    const Result<SweepResult>& swept = *desk.session.drop.sweep(desk.session.part_conditions());
    REQUIRE(swept);
    CHECK(swept->lines.front().points.front().x_si == Approx(1));
    CHECK(swept->lines.front().points.back().x_si == Approx(50));

    put(*shop.workshop, "profile", {{"currency", "USD"}}); // what was not typed follows, and no rate is in the way
    desk.settle();
    CHECK(desk.session.view.rank.budget == "20 USD");
    CHECK(desk.text("drop.range") == "1USD:50USD");
}

TEST_CASE("Drop's tube costs what `drop` says, and names the rate") {
    EuroShop shop;
    Desk& desk = shop.desk;
    desk.session.view.view = "drop";
    desk.settle();
    DropRequest request;
    request.setup = desk.session.view.drop_setup;
    request.metal = desk.session.drop.metal();
    request.conditions = desk.session.part_conditions(); // a casting, where nothing else is asked
    const DropResult alone = *drop(testing::real_catalogue(), request);
    CHECK(desk.text("drop.tube.detail") == "metal " + significant(alone.cost_usd / 1.25, 3) + " EUR");
    desk.point_at("drop.tube");
    CHECK(contains(desk.text("hover"), rate_words));
}

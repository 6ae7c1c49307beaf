#include "answers/workshop/entries_report.hpp"
#include "questions/say/shown_money.hpp"
#include "tests/gui/desk.hpp"
#include "tests/gui/shop.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

using namespace pourbook;
using testing::Desk;
using testing::put;
using testing::Shop;

namespace {

/// The Trials view over a workshop.
struct Bench : Shop {
    Desk desk{testing::real_catalogue(), 1440, 1200, 1, workshop.get()}; // the form of a drop is long
    Bench() {
        desk.session.view.view = "trials";
        desk.settle();
    }
};

} // namespace

TEST_CASE("a lot entered in the window is kept, ranked from the shelf, and undone") {
    Bench bench;
    Desk& desk = bench.desk;
    desk.click("bench.shelf");
    desk.click("shelf.stock");
    desk.fill("field.metal", "silver");
    desk.fill("field.mass", "1.2 kg");
    desk.fill("field.price", "900 USD/kg");
    desk.click("entry.keep");
    desk.settle();
    const auto kept = bench.workshop->entries(known_kind("stock"));
    REQUIRE(kept);
    REQUIRE(kept->size() == 1);
    CHECK(text_of(known_kind("stock"), kept->front(), "mass") == "1.2 kg");

    desk.session.view.view = "rank";
    desk.session.view.rank.on_shelf = true;
    desk.settle();
    CHECK(desk.text("rank.row.1") == "silver");
    CHECK_FALSE(desk.shows("rank.row.2"));

    desk.session.view.view = "trials";
    desk.settle();
    desk.click("entry.undo");
    desk.settle();
    CHECK(bench.workshop->entries(known_kind("stock"))->empty());
}

TEST_CASE("a drop entered in the window shows what it says of the metal beside what was predicted") {
    Bench bench;
    Desk& desk = bench.desk;
    CHECK(desk.text("field.magnet") == desk.session.view.drop_setup.magnet); // as in Drop
    CHECK(desk.text("field.tube") == "18mm:24mm:400mm");
    desk.fill("field.metal", "copper");
    desk.fill("field.times", "12.0 s, 12.3 s");
    desk.click("entry.keep");
    desk.settle();
    const std::string shown = desk.text("trial.trial-1");
    CHECK(shown.find("%IACS") != std::string::npos);
    CHECK(shown.find("measured 12.15 s, predicted for copper") != std::string::npos);

    desk.session.view.drop_setup = {"cylinder:15mmx15mm", "N42", "", "", "", "", "", "18mm:24mm:400mm"};
    desk.session.view.view = "drop";
    desk.settle();
    desk.point_at("drop.bars.copper.0");
    CHECK(desk.text("hover").find("measured: 12.3 s") != std::string::npos);
}

TEST_CASE("a magnet written already, or a slit tube in Drop, is not taken from there") {
    Bench bench;
    Desk& desk = bench.desk;
    const auto typed = [&](const char* field) {
        return desk.session.passing.entry.entry.values[known_kind("trial").at(field)];
    };
    desk.session.view.drop_setup.slits = "1";
    desk.click("entry.new");
    CHECK(typed("type") == "drop");
    CHECK(typed("tube").empty());
    desk.session.view.drop_setup.slits = "";
    desk.click("field.magnet.form");
    desk.click("field.magnet.form.sphere");
    desk.fill("field.magnet.diameter", "12");
    desk.click("field.type");
    desk.click("field.type.drop");
    CHECK(typed("magnet") == "sphere:12mm");
    CHECK(typed("tube").empty());
}

TEST_CASE("an entry that can't be kept says why and is not lost from the form") {
    Bench bench;
    Desk& desk = bench.desk;
    desk.click("bench.shelf");
    desk.click("shelf.stock");
    desk.fill("field.metal", "copper");
    desk.click("entry.keep");
    desk.frames();
    CHECK(desk.text("entry.fault").find("mass") != std::string::npos);
    CHECK(desk.session.passing.entry.entry.values[known_kind("stock").at("metal")] == "copper");
    CHECK(bench.workshop->entries(known_kind("stock"))->empty());
}

TEST_CASE("an own price entered in the window counts at once") {
    Bench bench;
    Desk& desk = bench.desk;
    desk.click("bench.shelf");
    desk.click("shelf.price");
    desk.fill("field.metal", "copper");
    desk.fill("field.price", "3 USD/kg");
    desk.fill("field.date", "2026-11-20");
    desk.click("entry.keep");
    desk.settle();
    const Metal* copper = desk.session.catalogue.metal("copper");
    REQUIRE(copper);
    const Result<Evaluated> price = evaluate(desk.session.catalogue, *copper, "price", {});
    REQUIRE(price);
    CHECK(price->value_si == Approx(3));
}

TEST_CASE("what of the workshop can't be used is said in the window") {
    Bench bench;
    Desk& desk = bench.desk;
    desk.click("bench.shelf");
    desk.click("shelf.price");
    desk.fill("field.metal", "copper");
    desk.fill("field.price", "3 EUR/kg");
    desk.fill("field.date", "2026-11-20");
    desk.click("entry.keep");
    desk.settle();
    REQUIRE(desk.session.remarks().size() == 1); // no rate of exchange
    CHECK(desk.session.remarks().front().find("EUR") != std::string::npos);
    CHECK(desk.text("remark").find("left out: own price of copper: no rate of exchange for EUR") == 0);
}

TEST_CASE("the form of a trial opens with the commonest type and shows the fields that belong to it") {
    Bench bench;
    Desk& desk = bench.desk;
    CHECK(desk.text("field.type") == "drop");
    CHECK(desk.shows("field.magnet"));
    CHECK_FALSE(desk.shows("field.resistance"));
    desk.click("field.type");
    desk.click("field.type.four-wire");
    desk.settle();
    CHECK(desk.shows("field.resistance"));
    CHECK(desk.shows("field.tube"));
    CHECK_FALSE(desk.shows("field.magnet"));
}

TEST_CASE("what a trial shows stands in signs of print") {
    Bench bench;
    Desk& desk = bench.desk;
    desk.click("field.type");
    desk.click("field.type.weighing");
    desk.fill("field.metal", "copper");
    desk.fill("field.mass", "860 g");
    desk.click("field.part.form");
    desk.click("field.part.form.bar");
    desk.fill("field.part.diameter", "35 mm");
    desk.fill("field.part.length", "100 mm");
    desk.click("entry.keep");
    desk.settle();
    CHECK(desk.text("trial.trial-1").find("g/cm³") != std::string::npos);
    for (const char* typed : {"+-", "kg/m3"}) CHECK(desk.text("trial.trial-1").find(typed) == std::string::npos);
}

TEST_CASE("the window starts in the units of the profile and with the kept pins, and shows money in its currency") {
    Shop shop;
    put(*shop.workshop, "profile", {{"units", "workshop"}, {"currency", "EUR"}});
    put(*shop.workshop, "pin", {{"metal", "zinc"}});
    Desk desk(testing::real_catalogue(), 1440, 900, 1, shop.workshop.get());
    CHECK(desk.session.units() == UnitSystem::workshop);
    CHECK(is_pinned(desk.session.view, "zinc"));
    const Property& price = *desk.session.catalogue.property("price");
    CHECK(shown_unit(price, UnitSystem::shown) == "USD/kg"); // no rate yet, and that is said
    REQUIRE(desk.session.remarks().size() == 1);
    CHECK(desk.session.remarks().front().find("rate of exchange for EUR") != std::string::npos);

    put(*shop.workshop, "rate",
        {{"currency", "EUR"}, {"usd", "1.25"}, {"date", "2026-11-02"}, {"source", "central bank"}});
    desk.settle(); // the window sees the change by itself
    CHECK(desk.session.remarks().empty());
    const Property& now = *desk.session.catalogue.property("price");
    CHECK(shown_unit(now, UnitSystem::shown) == "EUR/kg");
    CHECK(shown_number(now, 10, UnitSystem::shown) == Approx(8)); // 10 USD/kg at 1.25 USD for a euro
    CHECK(shown_number(now, 10, UnitSystem::base) == Approx(10));
    CHECK(shown_unit(now, UnitSystem::base) == "USD/kg");
    CHECK(shown_money(desk.session.catalogue, 10, 3, UnitSystem::shown) == "8.00 EUR");
    CHECK(shown_rate(desk.session.catalogue).find("central bank, 2026-11-02") != std::string::npos);

    desk.session.view.workshop_units = false; // chosen in the window: it stands while the profile stays as it is
    put(*shop.workshop, "pin", {{"metal", "tin"}});
    desk.settle();
    CHECK(desk.session.units() == UnitSystem::shown);
    CHECK(is_pinned(desk.session.view, "tin"));
}

TEST_CASE("a backup restored under the open window is taken in, and nothing of it is overwritten") {
    Bench bench;
    Desk& desk = bench.desk;
    put(*bench.workshop, "stock", {{"lot", "first"}, {"metal", "copper"}, {"mass", "1 kg"}});
    const std::string file = bench.workshop->path(), backup = file + ".safe";
    REQUIRE(bench.workshop->back_up(backup));
    put(*bench.workshop, "stock", {{"lot", "second"}, {"metal", "tin"}, {"mass", "2 kg"}});
    desk.click("bench.shelf");
    desk.click("shelf.stock");
    desk.click("entry.2");
    desk.fill("field.mass", "3 kg"); // being edited while the file is replaced
    const auto kept = restore_workshop(file, backup);
    REQUIRE(kept);
    desk.settle();
    CHECK(desk.shows("entry.1"));
    CHECK_FALSE(desk.shows("entry.2"));
    CHECK(desk.session.workshop.data().stock.size() == 1);
    CHECK(desk.session.passing.entry.entry.values[known_kind("stock").at("mass")] == "3 kg"); // not lost

    desk.click("entry.keep");
    desk.frames();
    CHECK(desk.text("entry.fault").find("no longer in the file") != std::string::npos);
    desk.click("entry.new");
    desk.fill("field.lot", "first");
    desk.fill("field.metal", "zinc");
    desk.fill("field.mass", "5 kg");
    desk.click("entry.keep");
    desk.frames();
    CHECK(desk.text("entry.fault").find("already") != std::string::npos);
    desk.fill("field.lot", "third");
    desk.click("entry.keep");
    desk.settle();

    const auto lots = [](Workshop& w) {
        std::vector<std::string> out;
        const auto entries = w.entries(known_kind("stock"));
        REQUIRE(entries);
        for (const Entry& e : *entries) out.push_back(e.values[0] + " " + e.values[2]);
        return out;
    };
    const auto now = open_workshop(file), before = open_workshop(*kept);
    REQUIRE(now);
    REQUIRE(before);
    CHECK(lots(**now) == std::vector<std::string>{"first 1 kg", "third 5 kg"});
    CHECK(lots(**before) == std::vector<std::string>{"first 1 kg", "second 2 kg"});
}

TEST_CASE("a list of the workshop leaves the window as the import reads it") {
    Bench bench;
    Desk& desk = bench.desk;
    put(*bench.workshop, "stock", {{"lot", "first"}, {"metal", "copper"}, {"mass", "1 kg"}, {"note", "a\tb"}});
    desk.click("bench.shelf");
    desk.click("shelf.stock");
    desk.settle();
    desk.click("entries.table.copy");
    const std::string copied = ImGui::GetClipboardText();
    CHECK(copied.starts_with("lot\tmetal\tmass\t"));
    CHECK(copied.find("\nfirst\tcopper\t1 kg\t") != std::string::npos);
    desk.click("entries.table.save");
    desk.ui.leaving.file = bench.workshop->path() + ".csv";
    desk.frames();
    desk.click("entries.table.go");
    desk.frames();
    std::ostringstream saved;
    saved << std::ifstream(bench.workshop->path() + ".csv", std::ios::binary).rdbuf();
    CHECK(saved.str() == csv_of_entries(known_kind("stock"), *bench.workshop->entries(known_kind("stock"))));
}

TEST_CASE("an entry that another program changed while it is edited here is not overwritten") {
    Bench bench;
    Desk& desk = bench.desk;
    put(*bench.workshop, "stock", {{"lot", "first"}, {"metal", "copper"}, {"mass", "1 kg"}});
    desk.click("bench.shelf");
    desk.click("shelf.stock");
    desk.fill("field.mass", "3 kg");
    const auto other = open_workshop(bench.workshop->path());
    REQUIRE(other);
    put(**other, "stock", {{"lot", "first"}, {"metal", "copper"}, {"mass", "7 kg"}});
    desk.click("entry.keep");
    desk.frames();
    CHECK(desk.text("entry.fault").find("changed by another program") != std::string::npos);
    CHECK((*other)->entries(known_kind("stock"))->front().values[2] == "7 kg");
}

TEST_CASE("what keeps an entry is in sight in a window of 900 px, whatever the form's length") {
    Shop shop;
    Desk desk(testing::real_catalogue(), 1440, 900, 1, shop.workshop.get());
    desk.session.view.view = "trials";
    desk.settle();
    desk.fill("field.metal", "copper");
    desk.click("entry.keep");
    desk.frames();
    CHECK(desk.text("entry.fault").find("times") != std::string::npos);
    desk.point_at("field.metal");
    ImGui::GetIO().MouseWheel = -40; // down the form, which is longer than the window
    desk.frames(4);
    desk.fill("field.times", "12.0 s");
    desk.point_at("field.times");
    ImGui::GetIO().MouseWheel = 40; // back to its head, where an entry is kept
    desk.frames(4);
    desk.click("entry.keep");
    desk.settle();
    CHECK(shop.workshop->entries(known_kind("trial"))->size() == 1);
}

TEST_CASE("nothing of the bench moves while what it answers is worked out again") {
    Bench bench;
    Desk& desk = bench.desk;
    const auto top = [&] { return desk.ui.probe.items().at("bench.shelf").y; };
    const double before = top();
    put(*bench.workshop, "stock", {{"lot", "first"}, {"metal", "copper"}, {"mass", "1 kg"}});
    desk.frames(1);
    for (int i = 0; i < 400 && desk.session.working(); ++i) {
        CHECK(top() == before);
        desk.frames(1);
    }
    desk.settle();
    CHECK(top() == before);
}

#include "db/store/workshop_file.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <filesystem>

using namespace pourbook;
using testing::Desk;

namespace {

/// A workshop's file of this test's own, and the Trials view over it.
class Bench {
public:
    Bench() {
        desk.session.view.view = "trials";
        desk.settle();
    }

private:
    struct Folder {
        Folder() { std::filesystem::remove_all(path); }
        ~Folder() { std::filesystem::remove_all(path); }
        std::filesystem::path path =
            std::filesystem::temp_directory_path() / ("pourbook-trials-" + std::to_string(::getpid()));
    };
    static std::unique_ptr<Workshop> opened(const Folder& folder) {
        Result<std::unique_ptr<Workshop>> file = open_workshop((folder.path / "workshop.sqlite").string());
        REQUIRE(file);
        return std::move(*file);
    }
    Folder folder_;

public:
    std::unique_ptr<Workshop> workshop = opened(folder_);
    Desk desk{testing::real_catalogue(), 1440, 900, 1, workshop.get()};
};

} // namespace

TEST_CASE("a lot entered in the window is kept, ranked from the shelf, and undone") {
    Bench bench;
    Desk& desk = bench.desk;
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
    desk.click("field.type");
    desk.click("field.type.drop");
    desk.frames();
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
    desk.click("field.type");
    desk.click("field.type.drop");
    CHECK(typed("tube").empty());
    desk.session.view.drop_setup.slits = "";
    desk.fill("field.magnet", "sphere:12mm");
    desk.click("field.type");
    desk.click("field.type.drop");
    CHECK(typed("magnet") == "sphere:12mm");
    CHECK(typed("tube").empty());
}

TEST_CASE("an entry that can't be kept says why and is not lost from the form") {
    Bench bench;
    Desk& desk = bench.desk;
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
    desk.click("shelf.price");
    desk.fill("field.metal", "copper");
    desk.fill("field.price", "3 EUR/kg");
    desk.fill("field.date", "2026-11-20");
    desk.click("entry.keep");
    desk.settle();
    REQUIRE(desk.session.left_out().size() == 1); // no rate of exchange
    CHECK(desk.session.left_out().front().find("EUR") != std::string::npos);
    CHECK(desk.text("left.out").find("EUR") != std::string::npos);
}

#include "db/store/workshop_file.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <filesystem>

using namespace pourbook;
using testing::Desk;

namespace {

/// A workshop's file of this test's own.
class Bench {
public:
    Bench() {
        std::filesystem::remove_all(folder_);
        Result<std::unique_ptr<Workshop>> opened = open_workshop((folder_ / "workshop.sqlite").string());
        REQUIRE(opened);
        workshop = std::move(*opened);
    }
    ~Bench() {
        workshop.reset();
        std::filesystem::remove_all(folder_);
    }
    std::unique_ptr<Workshop> workshop;

private:
    std::filesystem::path folder_ =
        std::filesystem::temp_directory_path() / ("pourbook-trials-" + std::to_string(::getpid()));
};

void fill(Desk& desk, const std::string& field, const std::string& words) {
    desk.click("field." + field);
    desk.press('A', true);
    desk.type(words);
    desk.tap(ImGuiKey_Enter);
    desk.frames();
}

} // namespace

TEST_CASE("a lot entered in the window is kept, ranked from the shelf, and undone") {
    Bench bench;
    Desk desk(testing::real_catalogue(), 1440, 900, 1, bench.workshop.get());
    desk.session.view.view = "trials";
    desk.settle();
    desk.click("shelf.stock");
    fill(desk, "metal", "silver");
    fill(desk, "mass", "1.2 kg");
    fill(desk, "price", "900 USD/kg");
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
    Desk desk(testing::real_catalogue(), 1440, 900, 1, bench.workshop.get());
    desk.session.view.view = "trials";
    desk.settle();
    desk.click("field.type");
    desk.click("field.type.drop");
    fill(desk, "metal", "copper");
    fill(desk, "magnet", "cylinder:15mmx15mm");
    fill(desk, "grade", "N42");
    fill(desk, "tube", "18mm:24mm:400mm");
    fill(desk, "times", "12.0 s, 12.3 s");
    desk.click("entry.keep");
    desk.settle();
    const std::string shown = desk.text("trial.trial-1");
    CHECK(shown.find("%IACS") != std::string::npos);
    CHECK(shown.find("measured 12.15 s, predicted for copper") != std::string::npos);
}

TEST_CASE("an entry that can't be kept says why and is not lost from the form") {
    Bench bench;
    Desk desk(testing::real_catalogue(), 1440, 900, 1, bench.workshop.get());
    desk.session.view.view = "trials";
    desk.settle();
    desk.click("shelf.stock");
    fill(desk, "metal", "copper");
    desk.click("entry.keep");
    desk.frames();
    CHECK(desk.text("entry.fault").find("mass") != std::string::npos);
    CHECK(desk.session.passing.entry.entry.values[known_kind("stock").at("metal")] == "copper");
    CHECK(bench.workshop->entries(known_kind("stock"))->empty());
}

TEST_CASE("an own price entered in the window counts at once") {
    Bench bench;
    Desk desk(testing::real_catalogue(), 1440, 900, 1, bench.workshop.get());
    desk.session.view.view = "trials";
    desk.settle();
    desk.click("shelf.price");
    fill(desk, "metal", "copper");
    fill(desk, "price", "3 USD/kg");
    fill(desk, "date", "2026-11-20");
    desk.click("entry.keep");
    desk.settle();
    const Metal* copper = desk.session.catalogue.metal("copper");
    REQUIRE(copper);
    const Result<Evaluated> price = evaluate(desk.session.catalogue, *copper, "price", {});
    REQUIRE(price);
    CHECK(price->value_si == Approx(3));
}

#include "gui/state/explain.hpp"
#include "gui/state/session.hpp"
#include "gui/state/typed_faults.hpp"
#include "gui/state/view_file.hpp"
#include "platform/running_mark.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <thread>

using namespace pourbook;

namespace {

/// A folder of its own, gone at the end.
struct Folder {
    std::filesystem::path path;
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "pourbook-state-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()));
        path = name;
    }
    ~Folder() { std::filesystem::remove_all(path); }
};

} // namespace

TEST_CASE("a view state comes back as it was") {
    const Folder folder;
    const std::string file = (folder.path / "deeper" / "view.json").string();
    ViewState view = first_view(testing::real_catalogue());
    view.pins = {"zinc", "copper"};
    view.rank.where = "liquidus < 1100 degC";
    view.curves.celsius = true;
    view.drop_setup.grade = "N52";
    view.dark = false;
    CHECK_FALSE(write_view(file, view));
    CHECK(read_view(file, ViewState{}).view == view);
}

TEST_CASE("a missing state file starts afresh and a damaged one says so and is kept") {
    const Folder folder;
    const ViewState start = first_view(testing::real_catalogue());
    const KeptView missing = read_view((folder.path / "none.json").string(), start);
    CHECK(missing.remark.empty());
    CHECK(missing.view == start);
    const std::string file = (folder.path / "bad.json").string();
    for (const char* content : {"", "{", "[1,2]", "\xFF\xFE"}) {
        std::ofstream(file) << content;
        const KeptView bad = read_view(file, start);
        CAPTURE(content);
        CHECK(bad.view == start);
        CHECK(bad.remark.find("starting afresh; the file as it was is '" + file + ".unreadable'") != std::string::npos);
    }
    CHECK(read_view(folder.path.string(), start).remark.find("no ordinary file") != std::string::npos);
    CHECK(write_view("/proc/none/view.json", start));
}

TEST_CASE("an odd field of the state costs that field alone") {
    const Folder folder;
    const std::string file = (folder.path / "odd.json").string();
    std::ofstream(file)
        << R"({"dark": "yes", "pins": ["zinc", 5], "find": "bronze", "rank": {"samples": [], "where": "x"}})";
    const ViewState start = first_view(testing::real_catalogue());
    const KeptView kept = read_view(file, start);
    CHECK(kept.view.find == "bronze");
    CHECK(kept.view.rank.where == "x");
    CHECK(kept.view.dark == start.dark);
    CHECK(kept.view.pins == start.pins);
    CHECK(kept.remark.find("dark, pins, samples") != std::string::npos);
    CHECK(std::filesystem::exists(file + ".unreadable"));
}

TEST_CASE("a window that ended without closing is known at the next start") {
    const Folder folder;
    const std::string file = (folder.path / "state.json").string();
    {
        const platform::RunningMark first(file), second(file); // two at once
        CHECK_FALSE(first.left_behind());
        CHECK_FALSE(second.left_behind());
    }
    CHECK_FALSE(platform::RunningMark(file).left_behind());
    std::ofstream(file + ".running") << 2147483646 << '\n'; // no process has this number
    {
        const platform::RunningMark after(file);
        CHECK(after.left_behind());
    }
    ViewState view = first_view(testing::real_catalogue());
    view.view = "pour";
    view.pour.set_all("part", {"stl:BIG", "tube:18mm:24mm:400mm"});
    CHECK(without_files(view).view == "rank");
    CHECK(without_files(view).pour.texts("part") == std::vector<std::string>{"tube:18mm:24mm:400mm"});
}

TEST_CASE("an exception in a worker is an answer, not the end of the window") {
    BackgroundWorks works;
    Background<int, Result<int>> background(works);
    const auto too_large = []() -> Result<int> { throw std::bad_alloc(); };
    const Result<int>* answer = nullptr;
    while (!(answer = background.ask(1, too_large))) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    CHECK(answer->problem().text.find("too large for the memory") != std::string::npos);
    Background<int, std::vector<int>> plain(works);
    const auto broken = []() -> std::vector<int> { throw std::runtime_error("no"); };
    const std::vector<int>* empty = nullptr;
    while (!(empty = plain.ask(1, broken))) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    CHECK(empty->empty());
}

TEST_CASE("a state of another reference is fitted to this one") {
    ViewState view;
    view.pins = {"copper", "unobtainium", "copper"};
    view.view = "elsewhere";
    view.rank.goal = "no-such-goal";
    view.conditions.set("at", "warm");
    const ViewState fit = fitted(view, testing::real_catalogue());
    CHECK(fit.pins == std::vector<std::string>{"copper"});
    CHECK(fit.view == "start");
    CHECK(testing::real_catalogue().goal(fit.rank.goal));
    CHECK_FALSE(fit.conditions.states("at"));
    CHECK(fit.selected == "copper");
}

TEST_CASE("conditions are split at semicolons and lines") {
    CHECK(split_conditions(" liquidus < 1100 degC ;; family != lead\nprice < 9 ") ==
          std::vector<std::string>{"liquidus < 1100 degC", "family != lead", "price < 9"});
    CHECK(split_conditions(" ; \n").empty());
}

TEST_CASE("faults name the column") {
    const Catalogue& c = testing::real_catalogue();
    CHECK(formula_fault(c, "conductivity / density").empty());
    CHECK(formula_fault(c, "conductivity / densty").find("column") != std::string::npos);
    CHECK(conditions_fault(c, "liquidus < 1100 degC; family != lead").empty());
    CHECK_FALSE(conditions_fault(c, "liquidus < ; family != lead").empty());
    CHECK(temperature_fault("68 degF").empty());
    CHECK_FALSE(temperature_fault("-300 degC").empty());
}

TEST_CASE("an answer off the frame thread is the newest asked for") {
    std::atomic<int> woken = 0;
    BackgroundWorks works{[&] { ++woken; }};
    Background<std::string, int> background(works);
    int number = 0;
    const auto ask = [&](int n) { return background.ask(std::to_string(n), [n] { return n * 10; }); };
    CHECK(ask(1) == nullptr);
    for (number = 2; number < 50; ++number) ask(number);
    const int* answer = nullptr;
    while (background.working()) answer = ask(49);
    answer = ask(49);
    REQUIRE(answer);
    CHECK(*answer == 490);
    CHECK(woken >= 1);
    CHECK(woken <= 49);
}

TEST_CASE("a newer question stops the older, and work can be stopped and asked anew") {
    BackgroundWorks works{{}};
    Background<std::string, int> background(works);
    std::atomic<int> begun = 0, stopped = 0;
    const auto endless = [&](const Progress& progress) {
        ++begun;
        while (progress(0.5)) std::this_thread::sleep_for(std::chrono::milliseconds(1));
        ++stopped;
        return -1;
    };
    CHECK(background.ask("long", endless) == nullptr);
    while (background.done() < 0.5) std::this_thread::yield();
    const int* answer = nullptr;
    while (!answer) answer = background.ask("short", [](const Progress&) { return 7; }); // ends only if "long" was told
    CHECK(*answer == 7);
    CHECK((begun == 1 && stopped == 1));
    background.ask("long", endless);
    background.cancel();
    CHECK(background.cancelled());
    while (background.working()) answer = background.ask("long", endless);
    REQUIRE(answer);
    CHECK(*answer == 7); // what was stopped is dropped, and not begun again by itself
    CHECK((begun == 2 && stopped == 2));
    background.ask_anew();
    background.ask("long", endless);
    CHECK(background.working());
    CHECK_FALSE(background.cancelled());
} // the end stops what still runs

TEST_CASE("a pinned mix comes back with its words and is a metal of the window") {
    const Folder folder;
    const std::string file = (folder.path / "view.json").string(), mix = "mix:1.2kg sterling-silver + 300g silver";
    ViewState view = first_view(testing::real_catalogue());
    view.pins = {"copper", mix, "mix:Xx 100"};
    CHECK_FALSE(write_view(file, view));
    const ViewState fit = fitted(read_view(file, ViewState{}).view, testing::real_catalogue());
    CHECK(fit.pins == std::vector<std::string>{"copper", mix});
    Session session(testing::real_catalogue(), fit, {});
    REQUIRE(session.catalogue.metal(mix));
    CHECK(session.catalogue.metal(mix)->name.find("estimate: ") == 0);
    CHECK_FALSE(testing::real_catalogue().metal(mix));
    session.ranking();
    session.view.pins = {"copper"};
    while (session.catalogue.metal(mix)) { // waits until nothing rests on the old catalogue
        session.keep_catalogue();
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    CHECK(session.catalogue.metal("copper"));
}

TEST_CASE("an explanation lists every source of a number") {
    const Catalogue& c = testing::real_catalogue();
    const Metal& copper = *c.metal("copper");
    const Property& resistivity = *c.property("resistivity");
    const Result<Evaluated> value = evaluate(c, copper, "resistivity", {});
    REQUIRE(value);
    const Explained explained = explain(c, copper, resistivity, value, UnitSystem::shown);
    CHECK(explained.head.find("µΩ·cm") != std::string::npos);
    REQUIRE(explained.sources.size() == value->sources.size());
    for (std::size_t i = 0; i < value->sources.size(); ++i) {
        CHECK(explained.sources[i].find(value->sources[i].key) == 0);
        CHECK(explained.sources[i].find(value->sources[i].locator) != std::string::npos);
    }
}

TEST_CASE("every record can be found again from its source") {
    const Catalogue& c = testing::real_catalogue();
    SourceIndex index(c);
    std::size_t taken = 0, records = 0;
    for (const Reference& r : c.references) {
        CHECK(index.taken_from(r.key).size() == index.count(r.key));
        taken += index.count(r.key);
    }
    for (const Metal& m : c.metals) records += m.records.size();
    CHECK(taken >= records);
    CHECK(index.taken_from("no-such-source").empty());
    CHECK(index.count("no-such-source") == 0);
}

TEST_CASE("a magnet and tube that this reference can't read give way to the scenario of the first look") {
    ViewState view = first_view(testing::real_catalogue());
    const SetupWords first = view.drop_setup;
    CHECK(drop_setup(testing::real_catalogue(), first));
    view.drop_setup.magnet = "cylinder:40mmx10mm"; // wider than the bore
    CHECK(fitted(view, testing::real_catalogue()).drop_setup == first);
}

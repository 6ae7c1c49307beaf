// Pictures and tables leave the window: from every chart and table, into a folder of the platform's convention, never
// over a file that is there unless asked for twice.
#include "answers/pour/pour_file.hpp"
#include "gui/state/save_folder.hpp"
#include "gui/widgets/leave_row.hpp"
#include "platform/folders.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <unistd.h>

using namespace pourbook;
using testing::Desk;
namespace fs = std::filesystem;

namespace {

/// A home of its own, with the user directories named in its file.
struct Home {
    fs::path path = fs::temp_directory_path() / ("pourbook-home." + std::to_string(::getpid()));
    Home() {
        fs::create_directories(path / ".config");
        fs::create_directories(path / "Bilder");
        std::ofstream(path / ".config/user-dirs.dirs")
            << "# folders\nXDG_PICTURES_DIR=\"$HOME/Bilder\"\nXDG_DOCUMENTS_DIR=\"$HOME/gone\"\n";
        setenv("HOME", path.c_str(), 1);
        for (const char* name : {"XDG_PICTURES_DIR", "XDG_DOCUMENTS_DIR", "XDG_CONFIG_HOME"}) unsetenv(name);
    }
    ~Home() { fs::remove_all(path); }
    std::string read(const fs::path& file) const {
        std::ostringstream out;
        out << std::ifstream(path / file, std::ios::binary).rdbuf();
        return out.str();
    }
};

Desk& in_view(Desk& desk, const char* view) {
    desk.session.date = "2026-11-25";
    desk.session.view.view = view;
    desk.session.view.pins = {"copper", "silver"};
    desk.settle();
    return desk;
}

} // namespace

TEST_CASE("folders follow the user directories, and home where one is gone, and names are not taken twice") {
    const Home home;
    CHECK(platform::save_folder("PICTURES") == (home.path / "Bilder").string());
    CHECK(platform::save_folder("DOCUMENTS") == home.path.string());
    setenv("XDG_PICTURES_DIR", home.path.c_str(), 1);
    CHECK(platform::save_folder("PICTURES") == home.path.string());
    std::ofstream(home.path / "a.png") << "x";
    CHECK(fresh_name(home.path, "a", ".png") == (home.path / "a-2.png").string());
    CHECK(file_name_of("Braking for the money, 2 (µΩ)") == "braking-for-the-money-2");
}

TEST_CASE("a chart is saved as a picture by its line, and asked for twice before it is replaced") {
    const Home home;
    Desk desk(testing::real_catalogue());
    in_view(desk, "curves").click("curve.chart.save");
    desk.frames();
    const std::string file = desk.text("curve.chart.file");
    CHECK(fs::path(file).parent_path() == home.path / "Bilder");
    desk.click("curve.chart.go");
    desk.frames();
    CHECK(desk.text("curve.chart.told") ==
          "saved as " + fs::path(file).filename().string() + " in " + (home.path / "Bilder").string());
    CHECK(home.read(file).substr(1, 3) == "PNG");
    const auto before = home.read(file);
    desk.click("curve.chart.save");
    CHECK(desk.ui.leaving.file != file);
    desk.ui.leaving.file = file;    // before the field has the focus and its own copy
    desk.session.view.dark = false; // another picture
    desk.frames();
    desk.click("curve.chart.go");
    desk.frames();
    CHECK(desk.text("curve.chart.told").find("Save again") != std::string::npos);
    CHECK(home.read(file) == before);
    desk.click("curve.chart.go");
    desk.frames();
    CHECK(home.read(file) != before);
}

TEST_CASE("what can't be saved is told in the line and the field stays") {
    const Home home;
    Desk desk(testing::real_catalogue());
    in_view(desk, "curves").click("curve.chart.save");
    for (const std::string& file : {std::string("x.jpg"), (home.path / "no/such/x.png").string()}) {
        desk.ui.leaving.file = file;
        desk.frames();
        desk.click("curve.chart.go");
        desk.frames();
        CHECK(desk.ui.leaving.fault);
        CHECK(desk.shows("curve.chart.file"));
    }
    desk.click("curve.chart.stop");
    desk.frames();
    CHECK(desk.shows("curve.chart.save"));
}

TEST_CASE("every chart and table has its line, and the clipboard gets a table, a caption, or the path of the picture") {
    const Home home;
    Desk desk(testing::real_catalogue());
    in_view(desk, "rank").click("ranking.table.copy");
    std::string copied = ImGui::GetClipboardText();
    CHECK(copied.substr(0, 5) == "rank\t");
    CHECK(copied.find("copper\tcopper (high purity)\t") != std::string::npos);
    desk.click("rank.chart.caption");
    copied = ImGui::GetClipboardText();
    CHECK(copied.find("Sources: ") != std::string::npos);
    CHECK(copied.find("2026-11-25") != std::string::npos);
    desk.click("rank.chart.copy");
    CHECK(fs::exists(ImGui::GetClipboardText()));
    in_view(desk, "compare").click("comparison.table.copy");
    copied = ImGui::GetClipboardText();
    CHECK(copied.find("silver\tsilver (fine)\t") != std::string::npos);
    CHECK(desk.shows("comparison.table.save"));
}

TEST_CASE("the sheet and the list of metals have their line too") {
    const Home home;
    Desk tall(testing::real_catalogue(), 1440, 2200); // the sheet's line stands below all its figures
    tall.session.view.selected = "copper";
    in_view(tall, "metals");
    CHECK(tall.shows("sheet.table.save"));
    CHECK(tall.shows("metals.table.save"));
}

TEST_CASE("a shortcut saves what the view shows, and where nothing can be saved it does nothing") {
    const Home home;
    Desk desk(testing::real_catalogue());
    in_view(desk, "rank").press('S', true);
    desk.frames();
    CHECK(desk.shows("rank.chart.file"));
    desk.tap(ImGuiKey_Escape);
    desk.frames();
    CHECK(desk.shows("rank.chart.save"));
    in_view(desk, "sources").press('S', true);
    desk.frames();
    in_view(desk, "rank");
    CHECK(desk.shows("rank.chart.save"));
}

TEST_CASE("the pour sheet leaves for the wall as the command line writes it") {
    const Home home;
    Desk desk(testing::real_catalogue());
    in_view(desk, "pour").press('S', true);
    desk.frames();
    CHECK(fs::path(desk.text("pour.sheet.file")).extension() == ".pdf");
    desk.click("pour.sheet.go");
    desk.frames();
    CHECK(home.read(fs::path(desk.ui.leaving.file)).starts_with("%PDF-"));
    desk.click("pour.sheet.save");
    desk.ui.leaving.file = (home.path / "sheet.md").string();
    desk.frames();
    desk.click("pour.sheet.go");
    desk.frames();
    const Result<PourRequest> request = pour_request_from(desk.session.view.pour, {}, testing::real_catalogue());
    REQUIRE(request);
    const Result<PourResult> plan = pour(testing::real_catalogue(), *request);
    REQUIRE(plan);
    const auto command = pour_sheet_file(*plan, testing::real_catalogue(), UnitSystem::shown, "x.md", "2026-11-25");
    REQUIRE(command);
    CHECK(home.read("sheet.md") == *command);
    desk.click("pour.sheet.copy");
    CHECK(std::string(ImGui::GetClipboardText()).starts_with("POUR SHEET: "));
}

TEST_CASE("every table of the window leaves by its own line, with what it shows") {
    const Home home;
    Desk desk(testing::real_catalogue());
    const auto copied = [&](const char* line) {
        desk.settle();
        REQUIRE(desk.shows(std::string(line) + ".table.save"));
        desk.click(std::string(line) + ".table.copy");
        return std::string(ImGui::GetClipboardText());
    };
    in_view(desk, "mix");
    const std::string mix = copied("mix");
    for (const char* id : {"resistivity", "density", "liquidus", "metal_value"})
        CHECK(mix.find(id) != std::string::npos);

    in_view(desk, "sources");
    const std::size_t all = desk.session.catalogue.references.size();
    const std::string sources = copied("sources");
    CHECK(static_cast<std::size_t>(std::count(sources.begin(), sources.end(), '\n')) == all + 1);
    const std::string coverage = copied("coverage");
    CHECK(coverage.find("copper\t") != std::string::npos);
    desk.session.view.source = "matula-1979";
    const std::string taken = copied("taken");
    CHECK(static_cast<std::size_t>(std::count(taken.begin(), taken.end(), '\n')) ==
          desk.session.sources().taken_from("matula-1979").size() + 1);

    in_view(desk, "rank");
    desk.session.view.rank.goal = "strongest-brake";
    desk.session.view.rank.two_goals = true;
    desk.session.view.rank.second_goal = "braking-per-cost";
    CHECK(copied("tradeoff").find("on the front") != std::string::npos);
}

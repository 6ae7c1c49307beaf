// A link opens each view as it was; a damaged one says so in one line and opens the first view.
#include "gui/state/view_link.hpp"
#include "support/small_catalogue.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <functional>
#include <random>
#include <vector>

using namespace pourbook;

namespace {

const Catalogue& reference() {
    return testing::real_catalogue();
}

using Choice = std::function<void(ViewState&)>;

/// Choices of every view, with signs that an address must not hold as they are.
const std::vector<Choice>& choices() {
    static const std::vector<Choice> all = {
        [](ViewState& v) { v.view = "metals", v.selected = "silicon-bronze-c87300", v.find = "bronze & brass"; },
        [](ViewState& v) {
            v.pins = {"zinc", "copper"};
        },
        [](ViewState& v) {
            v.pins = {"mix:copper 90 tin 10", "copper"};
        },
        [](ViewState& v) { v.pins.clear(); },
        [](ViewState& v) { v.rank.goal = "strongest-brake", v.rank.samples = 20000; },
        [](ViewState& v) { v.rank.goal.clear(), v.rank.formula = "conductivity^2 / (density * price) # %"; },
        [](ViewState& v) { v.rank.where = "liquidus < 1100 degC; price <= 20 EUR/kg"; },
        [](ViewState& v) { v.rank.two_goals = true, v.rank.second_high = false, v.rank.only_pinned = true; },
        [](ViewState& v) { v.rank.holding = "budget", v.rank.budget = "12.50 €"; },
        [](ViewState& v) {
            v.view = "compare", v.versus = {"copper", "zinc"};
        },
        [](ViewState& v) {
            v.view = "curves", v.curves = {"thermal_conductivity", false, true};
        },
        [](ViewState& v) { v.conditions.set("at", "77 K:300 K"); },
        [](ViewState& v) { v.conditions.set("at", "68 degF").set("condition", "annealed"); },
        [](ViewState& v) { v.view = "drop", v.drop_setup.magnet = "ball:20mm", v.drop_setup.grade = "N52"; },
        [](ViewState& v) { v.drop.against = true, v.drop.second.tube = "18mm:40mm:1m", v.drop.over = "bore"; },
        [](ViewState& v) {
            v.view = "mix", v.mix.words.stocks = {{"1 kg", "copper", "9 EUR"}, {"5 %", "tin", ""}};
        },
        [](ViewState& v) { v.mix.words.composition.clear(), v.mix.chart = "conductivity"; },
        [](ViewState& v) {
            v.view = "pour", v.pour.set_all("part", {"tube:18mm:24mm:400mm", "plate:9cmx9cmx1cm"});
        },
        [](ViewState& v) { v.pour.set("metal", "zinc").set_all("part", {}); },
        [](ViewState& v) { v.view = "questions", v.questions.question = "plate"; },
        [](ViewState& v) { v.view = "trials", v.shelf = "stock"; },
        [](ViewState& v) { v.view = "sources", v.find_source = "Handbook, 2nd ed. [1990]"; },
        [](ViewState& v) { v.dark = false, v.workshop_units = true, v.help = true; },
    };
    return all;
}

} // namespace

TEST_CASE("a link opens each view as it was") {
    const ViewState first = first_view(reference());
    std::mt19937 draw(30);
    int links = 0;
    const auto comes_back = [&](const ViewState& view) {
        const std::string words = link_words(view, first);
        const KeptView read = read_link("#" + words, first);
        INFO(words);
        CHECK(read.remark.empty());
        CHECK(read.view == view);
        CHECK(words.find_first_of(" \"<>#") == std::string::npos); // RFC 3986 has no place for these
        ++links;
    };
    comes_back(first);
    for (const Choice& choose : choices()) {
        ViewState view = first;
        choose(view);
        comes_back(view);
    }
    for (int i = 0; i < 20; ++i) {
        ViewState view = first;
        for (int n = 0; n < 5; ++n) choices()[draw() % choices().size()](view);
        comes_back(view);
    }
    CHECK(links >= 30);
}

TEST_CASE("a link may be written by hand") {
    const ViewState first = first_view(reference());
    const KeptView duel = read_link("#versus=copper,zinc&goal=strongest-brake", first);
    CHECK(duel.remark.empty());
    CHECK(duel.view.view == "compare");
    CHECK(duel.view.versus == VersusChoice{"copper", "zinc"});
    CHECK(duel.view.rank.goal == "strongest-brake");
    CHECK(read_link("", first).view == first);
    CHECK(read_link("view=curves&conditions.at=77%20K", first).view.conditions.text("at") == "77 K");
}

TEST_CASE("a damaged link says so in one line and opens the first view") {
    const ViewState first = first_view(reference());
    for (const std::string words :
         {"nonsense", "view", "view=nowhere", "colour=red", "pins=%4", "pins=%zz", "rank.two_goals=perhaps",
          "rank.samples=many", "versus=copper", "versus=a,b,c", "view=rank&questions=3", "mix.words.stocks=[1,2]",
          "pins=[copper", "=", "&=&", "rank.goal", "%00%ff"}) {
        const KeptView read = read_link(words, first);
        INFO(words);
        CHECK(read.view == first);
        CHECK(read.remark.find("the link can't be read (") == 0);
        CHECK(read.remark.find('\n') == std::string::npos);
    }
    CHECK(read_link("pins=" + std::string(9000, 'a'), first).remark.find("longer than 8000") != std::string::npos);
}

TEST_CASE("the window copies a link beside the picture") {
    testing::Desk desk(reference());
    desk.session.view.view = "curves";
    desk.settle();
    desk.session.passing.leaving = "copy link";
    desk.frames(1);
    const std::string copied = ImGui::GetClipboardText();
    INFO(copied);
    const KeptView read = read_link(copied.substr(copied.find('#')), first_view(reference()));
    CHECK(read.remark.empty());
    CHECK(read.view == desk.session.view);
}

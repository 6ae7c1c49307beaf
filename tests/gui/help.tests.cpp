// The page of the view at hand, beside it.
#include "gui/actions/actions.hpp"
#include "help/pages.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <cctype>
#include <set>

using namespace pourbook;
using testing::Desk;

namespace {

constexpr int f10 = keys::f1 + 9;

std::set<std::string> shortcuts() {
    std::set<std::string> out;
    for (const Action& a : actions()) out.insert(a.shortcut.text());
    return out;
}

bool is_key(const std::string& code) {
    return code.starts_with("Ctrl+") ||
           (code.size() <= 3 && code.starts_with("F") && code.size() > 1 && std::isdigit(code[1]));
}

} // namespace

TEST_CASE("help opens with its key, follows the view, and closes with the same key, Escape or a click") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    CHECK_FALSE(desk.shows("help.page"));
    desk.press(f10);
    CHECK(desk.text("help.page") == "rank");
    desk.press(keys::f1 + 4);
    CHECK(desk.text("help.page") == "drop");
    desk.press(f10);
    CHECK_FALSE(desk.shows("help.page"));
    desk.click("help");
    CHECK(desk.text("help.page") == "drop");
    desk.tap(ImGuiKey_Escape);
    CHECK_FALSE(desk.shows("help.page"));
    desk.press(f10);
    desk.click("help.close");
    CHECK_FALSE(desk.shows("help.page"));
}

TEST_CASE("Escape closes what is on top first") {
    Desk desk(testing::real_catalogue());
    desk.press(f10);
    desk.press('K', true);
    desk.type("zinc");
    desk.frames();
    CHECK(desk.session.passing.ask.open);
    desk.tap(ImGuiKey_Escape);
    CHECK_FALSE(desk.session.passing.ask.open);
    CHECK(desk.shows("help.page"));
    desk.press(keys::f1 + 4);
    desk.settle();
    desk.click("drop.bore"); // in a field Escape takes back what was typed
    desk.tap(ImGuiKey_Escape);
    CHECK(desk.shows("help.page"));
}

TEST_CASE("the view stays in use beside the help") {
    Desk desk(testing::real_catalogue(), 1280, 720);
    desk.press(f10);
    desk.settle();
    const std::size_t pins = desk.session.view.pins.size();
    desk.click("rank.row.9");
    CHECK(desk.session.view.pins.size() + 1 - pins <= 2);
    CHECK(desk.session.view.pins.size() != pins);
    CHECK(desk.shows("help.page"));
}

TEST_CASE("every view has a page, and every key that a page names is in the table") {
    const std::set<std::string> known = shortcuts();
    for (const Action& a : actions()) {
        const std::string id = a.id;
        if (!id.starts_with("view.")) continue;
        const HelpPage* page = help_page(id.substr(5));
        CAPTURE(id);
        REQUIRE(page);
        for (const HelpBlock& block : page->blocks)
            for (const HelpWord& word : block.words)
                for (const HelpPiece& piece : word)
                    if (piece.look == HelpPiece::Look::code && is_key(piece.text)) {
                        CAPTURE(piece.text);
                        CHECK(known.count(piece.text));
                    }
    }
}

#include "gui/actions/actions.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace pourbook;
using testing::Desk;

TEST_CASE("the action table has unique ids and shortcuts, and every entry a label") {
    std::set<std::string> ids, shortcuts;
    for (const Action& a : actions()) {
        CAPTURE(a.id);
        CHECK(ids.insert(a.id).second);
        CHECK(std::string(a.label).size() > 2);
        CHECK(a.run != nullptr);
        if (a.shortcut.key) CHECK(shortcuts.insert(a.shortcut.text()).second);
    }
}

TEST_CASE("function keys switch the views") {
    const Catalogue small = testing::small_catalogue();
    Desk desk(small);
    const std::pair<int, const char*> keys_of_views[] = {{1, "metals"},  {2, "rank"},   {3, "curves"},
                                                         {4, "compare"}, {5, "drop"},   {6, "mix"},
                                                         {7, "pour"},    {8, "trials"}, {9, "sources"}};
    for (const auto& [key, view] : keys_of_views) {
        desk.press(keys::f1 + key - 1);
        CHECK(desk.session.view.view == view);
    }
}

TEST_CASE("a metal is found, reached and pinned without the pointer") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    desk.press('F', true);
    CHECK(desk.session.view.view == "metals");
    desk.type("cartridge");
    desk.frames();
    CHECK(desk.session.view.selected == "brass-cartridge");
    desk.tap(ImGuiKey_Enter);
    CHECK_FALSE(is_pinned(desk.session.view, "brass-cartridge")); // it was pinned at the start
    desk.frames();
    desk.tap(ImGuiKey_Enter);
    CHECK(is_pinned(desk.session.view, "brass-cartridge"));
}

TEST_CASE("arrows move through the list while the name is being typed") {
    Desk desk(testing::real_catalogue());
    desk.press('F', true);
    desk.type("aluminium");
    desk.frames();
    const auto& found = desk.session.found();
    REQUIRE(found.size() > 3);
    CHECK(desk.session.view.selected == found[0]->slug);
    desk.tap(ImGuiKey_DownArrow);
    CHECK(desk.session.view.selected == found[1]->slug);
    desk.tap(ImGuiKey_UpArrow);
    CHECK(desk.session.view.selected == found[0]->slug);
}

TEST_CASE("undo and redo go through the choices") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    const ViewState before = desk.session.view;
    desk.press('P', true);
    desk.press('U', true);
    CHECK(desk.session.view.workshop_units);
    desk.press('Z', true);
    CHECK_FALSE(desk.session.view.workshop_units);
    desk.press('Z', true);
    CHECK(desk.session.view == before);
    action("redo")->run(desk.session);
    CHECK(desk.session.view.pins.size() + 1 == before.pins.size());
}

TEST_CASE("the metal typed whole is the one selected, and so is the command") {
    Desk desk(testing::real_catalogue());
    desk.settle();
    for (const char* name : {"lead", "copper", "Zn"}) {
        desk.press('F', true);
        desk.frames();
        desk.press('A', true);
        desk.type(name);
        desk.frames();
        CHECK(desk.session.view.selected ==
              desk.session.catalogue.metal(name == std::string("Zn") ? "zinc" : name)->slug);
    }
    CHECK(std::string(matching_actions("rank").front()->id) == "view.rank");
    CHECK(std::string(matching_actions("undo").front()->id) == "undo");
    CHECK(std::string(matching_actions("unpin").front()->id) == "unpin.all");
}

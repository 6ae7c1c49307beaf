// Every text of every view stands out from what it is drawn on, dark and light (text 4.5:1, Web Content Accessibility
// Guidelines 2.1, 1.4.3); the colours of graphics are held to theirs in charts/palette.tests.cpp.
#include "gui/actions/actions.hpp"
#include "tests/gui/desk.hpp"
#include "tests/gui/drawn_contrast.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::Desk;

namespace {

constexpr double least = 4.5;

/// The texts that don't, with their colours.
std::string pale_texts(Desk& desk) {
    std::string out;
    std::size_t seen = 0;
    const auto hex = [](Colour c) {
        char text[8];
        std::snprintf(text, sizeof text, "%02X%02X%02X", c.red, c.green, c.blue);
        return std::string(text);
    };
    for (const testing::DrawnText& t : testing::drawn_texts(desk.ui.colours().ground)) {
        ++seen;
        if (t.contrast < least)
            out +=
                "'" + t.words + "' " + hex(t.ink) + " on " + hex(t.behind) + ": " + std::to_string(t.contrast) + "\n";
    }
    REQUIRE(seen > 20);
    return out;
}

void check_in_both_lights(Desk& desk, const std::string& state) {
    for (const bool dark : {true, false}) {
        CAPTURE(state, dark);
        desk.session.view.dark = dark;
        apply_style(desk.ui.colours(), desk.ui.scale);
        desk.settle();
        CHECK(pale_texts(desk) == "");
    }
}

} // namespace

TEST_CASE("every text of every view stands out from what is behind it in both lights") {
    Desk desk(testing::real_catalogue());
    desk.session.view = first_view(testing::real_catalogue());
    desk.session.view.pins.push_back("copper");
    desk.settle();
    for (const Action& a : actions()) {
        if (!std::string(a.id).starts_with("view.")) continue;
        a.run(desk.session);
        check_in_both_lights(desk, a.id);
    }
    desk.session.view.view = "drop";
    desk.session.view.drop.face = "charts";
    check_in_both_lights(desk, "drop, charts");
    desk.session.view.view = "pour";
    desk.session.view.pour_face = "sheet";
    check_in_both_lights(desk, "pour, sheet");
    desk.session.view.help = true;
    check_in_both_lights(desk, "pour with help");
}

TEST_CASE("the measure of drawn contrast sees a pale text and what lies behind it") {
    Desk desk(testing::real_catalogue());
    const auto drawn = [](ImU32 ink, ImU32 behind) {
        ImGui::NewFrame();
        ImDrawList& list = *ImGui::GetForegroundDrawList();
        list.AddRectFilled({0, 0}, {400, 100}, behind);
        list.AddText({20, 20}, ink, "Hm");
        ImGui::Render();
        return testing::drawn_texts({0, 0, 0}).back();
    };
    CHECK(drawn(IM_COL32(119, 119, 119, 255), IM_COL32_WHITE).contrast == Approx(4.48).margin(0.01)); // from memory
    CHECK(drawn(IM_COL32_WHITE, IM_COL32_BLACK).contrast == Approx(21));
    const testing::DrawnText seen_through = drawn(IM_COL32_WHITE, IM_COL32(255, 255, 255, 128)); // half white on black
    CHECK(seen_through.words == "Hm");
    CHECK(static_cast<int>(seen_through.behind.red) == Approx(128).margin(1));
}

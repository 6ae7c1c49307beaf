// No letter of any view is cut off by the side of its box, at the sizes and themes the window promises. Up and down a
// list may scroll; sideways only what says so.
#include "gui/actions/actions.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <map>

using namespace pourbook;
using testing::Desk;

namespace {

using Corner = std::pair<float, float>;

/// Which letter stands at a place of the atlas.
std::map<Corner, ImWchar> letters_by_place() {
    std::map<Corner, ImWchar> out;
    for (const ImFont* font : ImGui::GetIO().Fonts->Fonts)
        for (const ImFontGlyph& g : font->Glyphs)
            if (g.Visible) out[{g.U0, g.V0}] = static_cast<ImWchar>(g.Codepoint);
    return out;
}

std::string utf8(ImWchar sign) {
    if (sign < 0x80) return std::string(1, static_cast<char>(sign));
    if (sign < 0x800) return {static_cast<char>(0xC0 | (sign >> 6)), static_cast<char>(0x80 | (sign & 0x3F))};
    return {static_cast<char>(0xE0 | (sign >> 12)), static_cast<char>(0x80 | ((sign >> 6) & 0x3F)),
            static_cast<char>(0x80 | (sign & 0x3F))};
}

/// The letters of a drawing command from left to right as drawn; a text that is cut is returned.
std::string cut_in(const ImDrawList& list, const ImDrawCmd& command, const std::map<Corner, ImWchar>& letters) {
    std::string run;
    bool cut = false;
    float end = 0, line = 0;
    for (unsigned i = 0; i + 6 <= command.ElemCount; i += 6) {
        const ImDrawVert& low = list.VtxBuffer[static_cast<int>(
            list.IdxBuffer[static_cast<int>(command.IdxOffset + i)] + command.VtxOffset)];
        const ImDrawVert& high = list.VtxBuffer[static_cast<int>(
            list.IdxBuffer[static_cast<int>(command.IdxOffset + i + 2)] + command.VtxOffset)];
        const auto letter = letters.find({low.uv.x, low.uv.y});
        if (letter == letters.end()) continue;
        const bool same_text = low.pos.x >= end - 2 && low.pos.x < end + 12 && std::abs(low.pos.y - line) < 14;
        if (!same_text) {
            if (cut) return run;
            run.clear();
        }
        run += utf8(letter->second);
        end = high.pos.x;
        line = low.pos.y;
        const bool seen = high.pos.y > command.ClipRect.y && low.pos.y < command.ClipRect.w;
        if (seen && (high.pos.x > command.ClipRect.z + 1 || low.pos.x < command.ClipRect.x - 1)) cut = true;
    }
    return cut ? run : "";
}

std::string first_cut_text() {
    const auto letters = letters_by_place();
    const ImDrawData& data = *ImGui::GetDrawData();
    for (int n = 0; n < data.CmdListsCount; ++n)
        for (const ImDrawCmd& command : data.CmdLists[n]->CmdBuffer)
            if (const std::string cut = cut_in(*data.CmdLists[n], command, letters); !cut.empty()) return cut;
    return {};
}

void check_all_views(double width, double height, float scale) {
    Desk desk(testing::real_catalogue(), width, height, scale);
    for (const Action& a : actions()) {
        if (!std::string(a.id).starts_with("view.")) continue;
        for (const bool dark : {true, false})
            for (const bool help : {false, true}) {
                CAPTURE(a.id, dark, help, width, scale);
                a.run(desk.session);
                desk.session.view.dark = dark;
                desk.session.view.help = help;
                desk.settle();
                CHECK(first_cut_text() == "");
            }
    }
}

} // namespace

TEST_CASE("no text leaves its box at 1280x720") {
    check_all_views(1280, 720, 1);
}
TEST_CASE("no text leaves its box at 1440x900") {
    check_all_views(1440, 900, 1);
}
TEST_CASE("no text leaves its box at 2560x1440, twice as large") {
    check_all_views(2560, 1440, 2);
}
TEST_CASE("no text leaves its box at 3840x2160, one and a half times as large") {
    check_all_views(3840, 2160, 1.5);
}

TEST_CASE("no line of a whole page of the help leaves its panel") {
    for (const float scale : {1.0F, 1.5F, 2.0F}) {
        const double wide = 1280 * static_cast<double>(scale);
        Desk desk(testing::real_catalogue(), wide, 2 * wide, scale); // high enough for the longest page
        desk.session.view.help = true;
        for (const Action& a : actions()) {
            if (!std::string(a.id).starts_with("view.")) continue;
            CAPTURE(a.id, scale);
            a.run(desk.session);
            desk.frames(4);
            CHECK(desk.text("help.unseen") == "0");
            CHECK(first_cut_text() == "");
        }
    }
}

TEST_CASE("the check of cut text sees a cut text") {
    Desk desk(testing::real_catalogue());
    ImGui::NewFrame();
    ImGui::SetNextWindowSize({120, 100});
    ImGui::Begin("narrow", nullptr, ImGuiWindowFlags_NoScrollbar);
    ImGui::TextUnformatted("longer than its window is wide");
    ImGui::End();
    ImGui::Render();
    CHECK(first_cut_text() != "");
}

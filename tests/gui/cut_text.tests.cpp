// No letter of any view is cut off by the side of its box, at the sizes and themes the window promises. Up and down a
// list may scroll; sideways only what says so.
#include "gui/actions/actions.hpp"
#include "tests/gui/desk.hpp"
#include "tests/gui/screen_text.hpp"

#include <catch2/catch.hpp>
#include <imgui_internal.h>

#include <algorithm>

using namespace pourbook;
using testing::Desk;

namespace {

/// In what scrolls sideways: what stands out there is reached.
bool can_be_brought_in(const testing::Letter& l) {
    for (const ImGuiWindow* w : ImGui::GetCurrentContext()->Windows)
        if (w->Active && !w->Hidden && w->ScrollMax.x > 0 &&
            w->InnerRect.Overlaps({l.low.x - 1, l.low.y, l.high.x + 1, l.high.y}))
            return true;
    return false;
}

/// The first text a letter of which is cut off by a side of its box.
std::string first_cut_text() {
    const auto cut = [](const testing::Letter& l) {
        const bool seen = l.high.y > l.clip.y && l.low.y < l.clip.w;
        return seen && (l.high.x > l.clip.z + 1 || l.low.x < l.clip.x - 1) && !can_be_brought_in(l);
    };
    for (const auto& text : testing::texts_on_screen())
        if (std::any_of(text.begin(), text.end(), cut)) return testing::words_of(text);
    return {};
}

/// A window of the toolkit that lets nobody scroll, laid out beyond its edge: letters wholly out there are never drawn,
/// but where the last of them was put is still known. Cells of a table likewise.
std::string beyond_its_edge(const ImGuiWindow& w) {
    const bool sideways = w.Flags & ImGuiWindowFlags_HorizontalScrollbar;
    const bool up_and_down = !(w.Flags & ImGuiWindowFlags_NoScrollWithMouse);
    const ImVec2 last = w.DC.CursorMaxPos, edge{w.InnerClipRect.Max.x, w.InnerRect.Max.y}; // a page may be scrolled
    if (!sideways && last.x > edge.x + 1) return std::string(w.Name) + ": wider by " + std::to_string(last.x - edge.x);
    if (!up_and_down && last.y > edge.y + 1)
        return std::string(w.Name) + ": higher by " + std::to_string(last.y - edge.y);
    return {};
}

std::string beyond_its_cell(ImGuiTable& table) {
    const float end = table.Flags & ImGuiTableFlags_ScrollX ? FLT_MAX : table.InnerClipRect.Max.x;
    for (int n = 0; n < table.ColumnsCount; ++n) {
        const ImGuiTableColumn& c = table.Columns[n];
        if (end == FLT_MAX && !c.IsVisibleX) continue; // takes its width when it is brought into sight
        const float last = std::max({c.ContentMaxXFrozen, c.ContentMaxXUnfrozen, c.ContentMaxXHeadersUsed});
        const float edge = std::min(c.MaxX, end);
        if (c.IsEnabled && (last > edge + 1 || c.MinX > end))
            return "column '" + std::string(ImGui::TableGetColumnName(&table, n)) + "' (" + std::to_string(n) +
                   "): wider by " + std::to_string(last - edge);
    }
    return {};
}

std::string first_beyond_its_edge() {
    ImGuiContext& g = *ImGui::GetCurrentContext();
    for (const ImGuiWindow* w : g.Windows)
        if (w->Active && !w->Hidden)
            if (const std::string words = beyond_its_edge(*w); !words.empty()) return words;
    for (int n = 0; n < g.Tables.GetMapSize(); ++n)
        if (ImGuiTable* t = g.Tables.TryGetMapData(n); t && t->LastFrameActive == g.FrameCount)
            if (const std::string words = beyond_its_cell(*t); !words.empty()) return words;
    return {};
}

/// One picture of the window, in both themes.
void check_state(Desk& desk, const std::string& state) {
    for (const bool dark : {true, false}) {
        CAPTURE(state, dark);
        desk.session.view.dark = dark;
        desk.settle();
        CHECK(first_cut_text() == "");
        CHECK(first_beyond_its_edge() == "");
    }
}

void check_all_views(double width, double height, float scale) {
    CAPTURE(width, scale);
    Desk desk(testing::real_catalogue(), width, height, scale);
    ViewState& view = desk.session.view;
    for (const Action& a : actions()) {
        if (!std::string(a.id).starts_with("view.")) continue;
        a.run(desk.session);
        check_state(desk, a.id);
        view.help = true;
        check_state(desk, std::string(a.id) + " with help");
        view.help = false;
    }
    desk.session.passing.sheet_open = true; // in a narrow window in place of the list
    view.view = "metals";
    check_state(desk, "a sheet");
    view.view = "trials";
    for (const Kind& kind : workshop_kinds()) {
        if (kind.name == "pin") continue;
        view.shelf = kind.name;
        check_state(desk, "trials, " + kind.name);
    }
    view.source = "usgs-mcs-2026";
    view.view = "sources";
    check_state(desk, "a source");
    view.view = "rank";
    view.rank.goal = "longest-fall";
    check_state(desk, "a ranking by the fall");
    view.rank.goal = "strongest-brake";
    view.rank.two_goals = true;
    view.rank.second_goal = "braking-per-cost";
    view.workshop_units = true;
    check_state(desk, "two goals, workshop units");
    view.pins = {"copper", "silver-copper-eutectic", "bronze-nickel-aluminium", "copper-high-conductivity-cast",
                 "zinc"};
    for (const char* name : {"compare", "curves", "drop", "pour", "mix"}) {
        view.view = name;
        check_state(desk, std::string(name) + ", long names, workshop units");
    }
}

} // namespace

TEST_CASE("no text leaves its box at 1280x720") {
    check_all_views(1280, 720, 1);
}
TEST_CASE("no text leaves its box at 1440x900") {
    check_all_views(1440, 900, 1);
}
TEST_CASE("no text leaves its box where the window is as narrow as a phone") {
    check_all_views(390, 844, 1);
}
TEST_CASE("no text leaves its box on a phone held upright, whole pages of it") {
    check_all_views(390, 4000, 1);
}
TEST_CASE("what is folded away in a narrow window is whole when it is opened") {
    Desk desk(testing::real_catalogue(), 390, 4000, 1);
    ViewState& view = desk.session.view;
    view.rank.goal = "longest-fall"; // magnet and tube stand among the limits
    view.rank.only_pinned = true;
    desk.settle();
    desk.click("settings");
    check_state(desk, "settings");
    const std::pair<const char*, const char*> heads[] = {
        {"rank", "rank.limits"}, {"drop", "drop.setup"}, {"pour", "pour.choice"}};
    for (const auto& [name, head] : heads) {
        view.view = name;
        desk.settle();
        desk.click(head);
        CHECK(desk.text(head) == "open");
        check_state(desk, head);
    }
    view.view = "drop";
    view.drop.against = true;
    check_state(desk, "two set-ups");
    desk.ui.evidence.show("copper", "resistivity");
    check_state(desk, "evidence");
    desk.ui.evidence.open = false;
    desk.ui.pouring.open = true;
    check_state(desk, "pouring mode");
    desk.ui.pouring.open = false;
}
TEST_CASE("no text leaves its box on a tablet held upright") {
    check_all_views(820, 1180, 1);
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

/// A hover text that is larger than the window, or was put beyond its edge.
std::string hover_beyond_the_window() {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    for (const ImGuiWindow* w : ImGui::GetCurrentContext()->Windows) {
        if (!w->Active || w->Hidden || !(w->Flags & ImGuiWindowFlags_Tooltip)) continue;
        const ImVec2 low = w->Pos, high = {w->Pos.x + w->Size.x, w->Pos.y + w->Size.y};
        if (low.x < 0 || low.y < 0 || high.x > size.x || high.y > size.y)
            return "from " + std::to_string(low.y) + " to " + std::to_string(high.y);
    }
    return {};
}

/// Points at everything a view shows; returns how many of them had something to say.
int check_hover_texts(Desk& desk) {
    int said = 0;
    const auto shown = desk.ui.probe.items();
    for (const auto& [id, item] : shown) {
        if (item.width <= 0 || !desk.shows(id)) continue;
        desk.point_at(id);
        if (!desk.shows("hover")) continue;
        ++said;
        CAPTURE(id, desk.text("hover"));
        CHECK(hover_beyond_the_window() == "");
        CHECK(first_cut_text() == "");
    }
    return said;
}

void check_hovers_at(double width, double height) {
    Desk desk(testing::real_catalogue(), width, height, 1);
    for (const Action& a : actions()) {
        const std::string id = a.id;
        if (!id.starts_with("view.")) continue;
        CAPTURE(id);
        a.run(desk.session);
        desk.settle();
        const int said = check_hover_texts(desk);
        CHECK((said > 0 || id == "view.curves" || id == "view.trials")); // a chart answers at its lines only
    }
}

TEST_CASE("no hover text leaves the window, whatever is pointed at") {
    check_hovers_at(1280, 720);
}
TEST_CASE("no hover text leaves a narrow window") {
    check_hovers_at(390, 844);
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
    CHECK(first_beyond_its_edge() != "");
}

TEST_CASE("the check of cut text sees a text that is wholly out of sight") {
    Desk desk(testing::real_catalogue());
    const auto drawn = [](ImVec2 place, bool in_table) {
        ImGui::NewFrame();
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize({220, 100});
        ImGui::Begin("narrow", nullptr, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
        if (in_table && ImGui::BeginTable("cells", 2)) {
            ImGui::TableNextRow();
            ImGui::TableNextColumn();
        }
        ImGui::SetCursorPos({ImGui::GetCursorPosX() + place.x, ImGui::GetCursorPosY() + place.y});
        ImGui::TextUnformatted("out of sight");
        if (in_table) ImGui::EndTable();
        ImGui::End();
        ImGui::Render();
        return first_beyond_its_edge();
    };
    for (int i = 0; i < 3; ++i) CHECK(drawn({0, 0}, false) == "");
    CHECK(drawn({400, 0}, false) != "");
    CHECK(drawn({0, 300}, false) != "");
    for (int i = 0; i < 3; ++i) CHECK(drawn({0, 0}, true) == "");
    CHECK(drawn({120, 0}, true) != "");
}

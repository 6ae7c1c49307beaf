#include "gui/widgets/tab_order.hpp"

#include "gui/widgets/take_keyboard.hpp"

#include <imgui.h>
#include <imgui_internal.h> // GetItemID

#include <algorithm>
#include <array>
#include <string_view>

namespace pourbook {
namespace {

// Codes as the window library counts them.
constexpr int tab_key = 258, enter_key = 257, f6_key = 295;

/// Rows of a table are one stop: inside, the arrows move.
std::string_view row_group(std::string_view id) {
    static constexpr std::array<std::string_view, 9> groups = {"rank.row.", "rank.pin.",  "list.pin.",
                                                               "list.",     "compare.",   "sheet.source.",
                                                               "source.",   "ask.entry.", "grid.pin."};
    const auto at = std::find_if(groups.begin(), groups.end(), [&](std::string_view g) { return id.starts_with(g); });
    return at == groups.end() ? std::string_view() : *at;
}

/// What its field does by typing too: a unit, a metal from the list beside its name.
bool belongs_to_field(std::string_view id) {
    return id.ends_with(".unit") || id.ends_with(".list");
}

bool down(int key) {
    return ImGui::IsKeyPressed(static_cast<ImGuiKey>(key), true);
}

} // namespace

void TabOrder::begin_frame() {
    const ImGuiIO& io = ImGui::GetIO();
#if IMGUI_VERSION_NUM < 18700
    ImGui::GetIO().KeyMap[ImGuiKey_Tab] = -1;
#endif
    before_ = std::move(stops_);
    stops_.clear();
    if (io.MouseClicked[0] || io.MouseClicked[1]) by_keys_ = false;
    if (down(tab_key) && !io.KeyCtrl && !io.KeyAlt) seek(io.KeyShift ? -1 : 1, false);
    if (down(f6_key) && io.KeyCtrl) seek(io.KeyShift ? -1 : 1, true);
    focused_.clear();
}

void TabOrder::cover() {
    stops_.clear();
    focused_.clear();
}

std::vector<std::string> TabOrder::stops() const {
    std::vector<std::string> ids;
    for (const Stop& stop : stops_) ids.push_back(stop.id);
    return ids;
}

void TabOrder::seek(int steps, bool by_panel) {
    if (before_.empty()) return;
    by_keys_ = true;
    const int count = static_cast<int>(before_.size());
    const auto found = std::find_if(before_.begin(), before_.end(), [&](const Stop& s) { return s.id == focused_; });
    int at = found == before_.end() ? (steps > 0 ? -1 : 0) : static_cast<int>(found - before_.begin());
    const unsigned panel = at >= 0 ? before_[static_cast<std::size_t>(at)].panel : 0;
    for (int tried = 0; tried < count; ++tried) {
        at = (at + steps + count) % count;
        if (!by_panel || before_[static_cast<std::size_t>(at)].panel != panel) break;
    }
    wanted_ = before_[static_cast<std::size_t>(at)].id;
}

void TabOrder::pass(const std::string& id) {
    if (ImGui::GetItemID() == 0 || belongs_to_field(id)) return; // words have no number
    const bool focus = ImGui::IsItemFocused();
    const std::string_view group = row_group(id);
    const bool same_rows = !group.empty() && std::any_of(stops_.begin(), stops_.end(),
                                                         [&](const Stop& s) { return s.id.starts_with(group); });
    if (!same_rows || focus) stops_.push_back({id, ImGui::GetID("")});
    if (focus) {
        focused_ = id;
        if (by_keys_) draw_ring();
    }
    if (id != wanted_) return;
    take_keyboard(-1);
    wanted_.clear();
}

void TabOrder::draw_ring() const {
    constexpr float apart = 2, width = 2;
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    list.AddRect({low.x - apart, low.y - apart}, {high.x + apart, high.y + apart},
                 ImGui::GetColorU32(ImGuiCol_NavHighlight), ImGui::GetStyle().FrameRounding, 0, width);
}

void let_return_press() {
#if IMGUI_VERSION_NUM < 18700
    static bool armed = false;
    ImGuiIO& io = ImGui::GetIO();
    if (!io.KeysDown[enter_key])
        armed = false;
    else if (io.KeysDownDuration[enter_key] < 0) // this press began outside a text field
        armed = !io.WantTextInput;
    const bool navigates = io.ConfigFlags & ImGuiConfigFlags_NavEnableKeyboard;
    if (armed && navigates) io.NavInputs[ImGuiNavInput_Activate] = 1;
#endif
}

} // namespace pourbook

#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"

#include <imgui_stdlib.h>

#include <algorithm>

namespace pourbook {
namespace {

constexpr double finder_width = 640;

bool key(ImGuiKey k) {
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(k));
}

void move(Passing& p, std::size_t count) {
    if (key(ImGuiKey_DownArrow)) ++p.finder_at;
    if (key(ImGuiKey_UpArrow) && p.finder_at > 0) --p.finder_at;
    if (count) p.finder_at = std::min(p.finder_at, count - 1);
}

/// Returns true when the row was clicked.
bool draw_row(Ui& ui, const Action& a, bool current) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool clicked = ImGui::Selectable(a.label, current, ImGuiSelectableFlags_SpanAllColumns);
    ui.probe.item(std::string("finder.") + a.id, a.label);
    ImGui::TableNextColumn();
    small_dim_text(ui, a.help);
    ImGui::TableNextColumn();
    small_dim_text(ui, a.shortcut.text());
    return clicked;
}

const Action* draw_found(Ui& ui, const std::vector<const Action*>& found) {
    const Action* clicked = nullptr;
    if (!ImGui::BeginTable("found", 3, ImGuiTableFlags_SizingFixedFit)) return clicked;
    ImGui::TableSetupColumn("label");
    ImGui::TableSetupColumn("help", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("shortcut");
    for (std::size_t i = 0; i < found.size(); ++i)
        if (draw_row(ui, *found[i], i == ui.session.passing.finder_at)) clicked = found[i];
    ImGui::EndTable();
    return clicked;
}

} // namespace

void draw_finder(Ui& ui) {
    Passing& p = ui.session.passing;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2, display.y * 0.12F}, ImGuiCond_Always, {0.5F, 0});
    ImGui::SetNextWindowSize({std::min(ui.px(finder_width), display.x), 0});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, u32(ui.colours().raised));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::Begin("finder", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoNav);
    if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
    ImGui::SetNextItemWidth(-1);
    if (ImGui::InputTextWithHint("##words", "type what you want to do", &p.finder_text)) p.finder_at = 0;
    ui.probe.item("finder.words", p.finder_text);
    const std::vector<const Action*> found = matching_actions(p.finder_text);
    move(p, found.size());
    const Action* chosen = draw_found(ui, found);
    if (found.empty()) dim_text(ui, "no such command");
    if (key(ImGuiKey_Enter) && !found.empty()) chosen = found[p.finder_at];
    const bool left = !ImGui::IsWindowFocused(ImGuiFocusedFlags_ChildWindows) && !ImGui::IsWindowAppearing();
    ImGui::End();
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    if (chosen || key(ImGuiKey_Escape) || left) p.finder_open = false;
    if (chosen && std::string(chosen->id) != "finder") chosen->run(ui.session);
}

} // namespace pourbook

#include "gui/widgets/splitter.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double edge_width = 14;

} // namespace

void begin_panel(const Ui& ui, const char* id, ImVec2 size, ImGuiWindowFlags flags) {
    if (ui.narrow())
        ImGui::PushID(id);
    else
        ImGui::BeginChild(id, size, false, flags);
}

void end_panel(const Ui& ui) {
    if (ui.narrow())
        ImGui::PopID();
    else
        ImGui::EndChild();
}

void beside(const Ui& ui, double gap) {
    if (!ui.narrow()) ImGui::SameLine(0, ui.px(gap));
}

ImVec2 rest_of_panel(const Ui& ui, double height) {
    const ImVec2 room = ImGui::GetContentRegionAvail();
    return ui.narrow() ? ImVec2{room.x, ui.px(height)} : room;
}

float split_width(Ui& ui, const std::string& id, float usual, double least_left, double least_right) {
    if (ui.narrow()) return ImGui::GetContentRegionAvail().x;
    const float room = ImGui::GetContentRegionAvail().x - ui.px(edge_width);
    const auto kept = ui.view().splits.find(id);
    const float width = kept == ui.view().splits.end() ? usual : static_cast<float>(kept->second) * room;
    ui.split_room[id] = room;
    ui.split_left[id] =
        std::clamp(width, std::min(ui.px(least_left), room / 2), std::max(room / 2, room - ui.px(least_right)));
    return ui.split_left[id];
}

void split_edge(Ui& ui, const std::string& id) {
    if (ui.narrow()) return;
    ImGui::SameLine(0, 0);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float height = std::max(1.0F, ImGui::GetContentRegionAvail().y);
    ImGui::InvisibleButton(("edge." + id).c_str(), {ui.px(edge_width), height});
    ui.probe.item("edge." + id, "");
    const bool held = ImGui::IsItemActive(), touched = held || ImGui::IsItemHovered();
    if (touched) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    if (held && ImGui::GetIO().MouseDelta.x != 0 && ui.split_room[id] > 0) {
        const float left = ui.split_left[id] + ImGui::GetIO().MouseDelta.x;
        ui.view().splits[id] = std::clamp(static_cast<double>(left / ui.split_room[id]), 0.1, 0.9);
    }
    if (ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(0)) ui.view().splits.erase(id);
    const float x = low.x + ui.px(edge_width / 2);
    if (touched) ImGui::GetWindowDrawList()->AddLine({x, low.y}, {x, low.y + height}, u32(ui.colours().edge), ui.px(2));
    ImGui::SameLine(0, 0);
}

} // namespace pourbook

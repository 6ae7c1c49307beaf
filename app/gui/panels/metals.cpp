#include "gui/panels/panels.hpp"

#include <algorithm>

namespace pourbook {

void draw_metals(Ui& ui) {
    const float room = ImGui::GetContentRegionAvail().x;
    const float list = std::clamp(room * 0.42F, ui.px(380), ui.px(620));
    ImGui::BeginChild("list", {list, 0});
    draw_metal_list(ui, list);
    ImGui::EndChild();
    ImGui::SameLine(0, ui.px(20));
    ImGui::BeginChild("sheet", {0, 0});
    draw_sheet(ui);
    ImGui::EndChild();
}

} // namespace pourbook

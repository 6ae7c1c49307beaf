#include "gui/panels/panels.hpp"
#include "gui/widgets/splitter.hpp"

#include <algorithm>

namespace pourbook {

void draw_metals(Ui& ui) {
    const float room = ImGui::GetContentRegionAvail().x;
    const float list = split_width(ui, "metals", std::clamp(room * 0.42F, ui.px(380), ui.px(620)), 380, 380);
    ImGui::BeginChild("list", {list, 0});
    draw_metal_list(ui, list);
    ImGui::EndChild();
    split_edge(ui, "metals");
    ImGui::BeginChild("sheet", {0, 0});
    draw_sheet(ui);
    ImGui::EndChild();
}

} // namespace pourbook

#include "gui/panels/panels.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

/// The list, or in its place the sheet of the metal chosen in it.
void draw_narrow_metals(Ui& ui) {
    bool& sheet_open = ui.session.passing.sheet_open;
    if (!sheet_open) return draw_metal_list(ui, ImGui::GetContentRegionAvail().x);
    if (word_button(ui, "metals.list", "← all metals", false)) sheet_open = false;
    draw_sheet(ui);
}

} // namespace

void draw_metals(Ui& ui) {
    if (ui.narrow()) return draw_narrow_metals(ui);
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

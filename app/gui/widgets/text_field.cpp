#include "gui/widgets/text_field.hpp"

#include "gui/widgets/text.hpp"

#include <imgui_stdlib.h>

namespace pourbook {
namespace {

/// Over the field drawn last, whose own letters were left out.
void draw_in_its_place(const std::string& shown) {
    const ImVec2 low = ImGui::GetItemRectMin(), inner = ImGui::GetStyle().FramePadding;
    const float room = ImGui::GetItemRectSize().x - 2 * inner.x;
    ImGui::GetWindowDrawList()->AddText({low.x + inner.x, low.y + inner.y}, ImGui::GetColorU32(ImGuiCol_Text),
                                        fitted(shown, room).c_str());
}

} // namespace

bool text_field(Ui& ui, const std::string& id, std::string& committed, const char* hint, float width,
                const std::function<std::string(const std::string&)>& fault, const std::string& shown) {
    Draft& draft = ui.drafts[id];
    if (!draft.open) {
        draft.typed = committed;
        draft.fault.clear();
    }
    const bool faulty = !draft.fault.empty();
    if (faulty) ImGui::PushStyleColor(ImGuiCol_Border, u32(ui.colours().warning));
    const bool other = !draft.open && !shown.empty() && shown != committed;
    if (other) ImGui::PushStyleColor(ImGuiCol_Text, 0);
    ImGui::SetNextItemWidth(width);
    const bool changed = ImGui::InputTextWithHint(("##" + id).c_str(), fitted_hint(hint, width).c_str(), &draft.typed);
    if (other) ImGui::PopStyleColor();
    if (other) draw_in_its_place(shown);
    if (faulty) ImGui::PopStyleColor();
    const bool left = ImGui::IsItemDeactivated();
    ui.probe.item(id, draft.typed);
    if (changed) draft.fault = fault(draft.typed);
    draft.open = ImGui::IsItemActive() || !draft.fault.empty();
    note_field(ui, draft);
    if (!left || !draft.fault.empty() || draft.typed == committed) return false;
    committed = draft.typed;
    return true;
}

void note_field(Ui& ui, const Draft& draft) {
    if (!draft.fault.empty()) ui.faulty_frame = ImGui::GetFrameCount();
}

std::string fitted_hint(const std::string& hint, float width) {
    return fitted(hint, width - 2 * ImGui::GetStyle().FramePadding.x);
}

bool begin_combo(const std::string& id, const std::string& shown, float width) {
    const float room = width - 2 * ImGui::GetStyle().FramePadding.x - ImGui::GetFrameHeight(); // beside the arrow
    ImGui::SetNextItemWidth(width);
    if (!ImGui::BeginCombo(("##" + id).c_str(), shown.empty() ? "" : fitted(shown, room).c_str(),
                           ImGuiComboFlags_HeightLargest))
        return false;
    const ImGuiStyle& style = ImGui::GetStyle(); // lines as high as a table's rows
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {style.ItemSpacing.x, 2 * style.CellPadding.y});
    return true;
}

void end_combo() {
    ImGui::PopStyleVar();
    ImGui::EndCombo();
}

const std::string& field_fault(Ui& ui, std::string_view id) {
    return ui.drafts[std::string(id)].fault;
}

void field_label(Ui& ui, const char* words, const std::string& help, double width) {
    ImGui::AlignTextToFramePadding();
    dim_text(ui, words);
    if (ImGui::IsItemHovered()) hover_text(ui, std::string(words) + "\n" + help);
    ImGui::SameLine(ui.px(width));
}

void fault_line(Ui& ui, const std::string& id) {
    fault_line(ui, id, field_fault(ui, id));
}

void fault_line(Ui& ui, const std::string& id, const std::string& fault) {
    if (fault.empty()) return;
    warning_text(ui, fault);
    ui.probe.item(id + ".fault", fault);
}

} // namespace pourbook

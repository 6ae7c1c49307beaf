#include "gui/widgets/text_field.hpp"

#include <imgui_stdlib.h>

namespace pourbook {

bool text_field(Ui& ui, const std::string& id, std::string& committed, const char* hint, float width,
                const std::function<std::string(const std::string&)>& fault) {
    Draft& draft = ui.drafts[id];
    if (!draft.open) {
        draft.typed = committed;
        draft.fault.clear();
    }
    const bool faulty = !draft.fault.empty();
    if (faulty) ImGui::PushStyleColor(ImGuiCol_Border, u32(ui.colours().warning));
    ImGui::SetNextItemWidth(width);
    const bool changed = ImGui::InputTextWithHint(("##" + id).c_str(), hint, &draft.typed);
    if (faulty) ImGui::PopStyleColor();
    const bool left = ImGui::IsItemDeactivated();
    ui.probe.item(id, draft.typed);
    if (changed) draft.fault = fault(draft.typed);
    draft.open = ImGui::IsItemActive() || !draft.fault.empty();
    if (!left || !draft.fault.empty() || draft.typed == committed) return false;
    committed = draft.typed;
    return true;
}

const std::string& field_fault(Ui& ui, const std::string& id) {
    return ui.drafts[id].fault;
}

} // namespace pourbook

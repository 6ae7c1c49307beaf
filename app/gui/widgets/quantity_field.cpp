#include "gui/widgets/quantity_field.hpp"

#include "gui/state/typed_quantity.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <imgui_stdlib.h>

#include <cmath>

namespace pourbook {
namespace {

struct Nudge {
    int wheel = 0;
};

/// Arrow keys and the wheel write into the text being edited.
int nudge(ImGuiInputTextCallbackData* data) {
    int& wheel = static_cast<Nudge*>(data->UserData)->wheel;
    const bool key = data->EventFlag == ImGuiInputTextFlags_CallbackHistory;
    const int steps = key ? (data->EventKey == ImGuiKey_UpArrow ? 1 : -1) : std::exchange(wheel, 0);
    if (steps == 0) return 0;
    const std::string before(data->Buf, static_cast<std::size_t>(data->BufTextLen));
    const std::string after = nudged(before, steps, ImGui::GetIO().KeyShift);
    if (after == before) return 0;
    data->DeleteChars(0, data->BufTextLen);
    data->InsertChars(0, after.c_str());
    return 0;
}

/// How the text is read, at the right of the field where there is room behind what is typed.
void draw_echo(const Ui& ui, const std::string& echo, const std::string& typed) {
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
    const float padding = ImGui::GetStyle().FramePadding.x, width = ImGui::CalcTextSize(echo.c_str()).x;
    const float left = high.x - padding - width;
    if (left < low.x + 2 * padding + ImGui::CalcTextSize(typed.c_str()).x) return;
    ImGui::GetWindowDrawList()->AddText({left, low.y + ImGui::GetStyle().FramePadding.y}, u32(ui.colours().dim),
                                        echo.c_str());
}

/// The unit at the right edge; returns the one chosen, else nothing.
std::string draw_unit(Ui& ui, const std::string& id, const std::string& unit, float width) {
    std::string chosen;
    const std::string popup = id + ".units";
    ImGui::PushStyleColor(ImGuiCol_Text, u32(ui.colours().dim));
    if (ImGui::Button((unit_sign(unit) + "##" + id + ".unit").c_str(), {width, 0})) ImGui::OpenPopup(popup.c_str());
    ImGui::PopStyleColor();
    ui.probe.item(id + ".unit", unit);
    if (!ImGui::BeginPopup(popup.c_str())) return chosen;
    for (const std::string& other : units_beside(unit)) {
        if (ImGui::Selectable((unit_sign(other) + "##" + other).c_str(), other == unit)) chosen = other;
        ui.probe.item(id + ".unit." + other, other);
    }
    ImGui::EndPopup();
    return chosen;
}

} // namespace

bool quantity_field(Ui& ui, const std::string& id, std::string& kept, const QuantityLook& look,
                    const std::function<std::string(const std::string&)>& fault) {
    Draft& draft = ui.drafts[id];
    const SplitQuantity split = split_quantity(kept);
    if (draft.unit.empty()) draft.unit = look.unit;
    if (!split.unit.empty()) draft.unit = split.unit; // what stands in the field is what is kept
    if (!draft.open) {
        draft.typed = split.number;
        draft.fault.clear();
    }
    const bool faulty = !draft.fault.empty();
    const float unit_width =
        ImGui::CalcTextSize(unit_sign(draft.unit).c_str()).x + 2 * ImGui::GetStyle().FramePadding.x;
    const float width = look.width - unit_width;
    Nudge by_wheel;
    if (draft.open && draft.hovered) by_wheel.wheel = static_cast<int>(std::round(ImGui::GetIO().MouseWheel));
    if (faulty) ImGui::PushStyleColor(ImGuiCol_Border, u32(ui.colours().warning));
    ImGui::SetNextItemWidth(width);
    const bool changed = ImGui::InputTextWithHint(
        ("##" + id).c_str(), fitted_hint(look.hint, width).c_str(), &draft.typed,
        ImGuiInputTextFlags_CallbackHistory | ImGuiInputTextFlags_CallbackAlways, nudge, &by_wheel);
    if (faulty) ImGui::PopStyleColor();
    const bool active = ImGui::IsItemActive(), left = ImGui::IsItemDeactivated();
    draft.hovered = ImGui::IsItemHovered();
    ui.probe.item(id, draft.typed);
    const std::string text = kept_quantity(draft.typed, draft.unit);
    if (changed) draft.fault = fault(text);
    draft.open = active || !draft.fault.empty();
    if (const std::string echo = active ? echo_of(text, draft.unit) : ""; !echo.empty()) {
        draw_echo(ui, echo, draft.typed);
        ui.probe.say(id + ".echo", echo);
    }
    note_field(ui, draft);
    ImGui::SameLine(0, 0);
    const std::string unit = draw_unit(ui, id, draft.unit, unit_width);
    if (!unit.empty() && draft.fault.empty()) {
        const std::string turned = in_unit(kept, unit);
        draft.unit = unit;
        if (turned == kept || !fault(turned).empty()) return false;
        kept = turned;
        return true;
    }
    if (!left || !draft.fault.empty() || text == kept) return false;
    kept = text;
    return true;
}

} // namespace pourbook

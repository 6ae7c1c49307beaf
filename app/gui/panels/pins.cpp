#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"

#include <cfloat>

namespace pourbook {
namespace {

/// Name and cross of one pinned metal. Returns true when the cross was clicked.
bool draw_pin(Ui& ui, const Metal& metal, std::size_t slot) {
    ImGui::PushID(metal.slug.c_str());
    ImGui::BeginGroup();
    const float above = ui.narrow() ? ImGui::GetStyle().FramePadding.y : ui.px(3);
    const float height = ImGui::GetTextLineHeight() + 2 * above;
    pin_mark(ui, slot, height);
    ImGui::SameLine(0, ui.px(2));
    metal_swatch(ui, metal, height);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {ui.px(4), above});
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0);
    ImGui::PushStyleColor(ImGuiCol_Button, 0);
    ImGui::SameLine(0, ui.px(2));
    if (ImGui::Button(metal.name.c_str())) show_metal(ui.session, metal.slug);
    ui.probe.item("pin." + metal.slug, metal.name);
    if (ImGui::IsItemHovered()) hover_text(ui, metal.name + "\nopen its sheet");
    ImGui::SameLine(0, 0);
    ImGui::PushStyleColor(ImGuiCol_Text, u32(ui.colours().dim));
    const bool off = ImGui::Button("×");
    ui.probe.item("unpin." + metal.slug, "×");
    ImGui::PopStyleColor(2);
    ImGui::PopStyleVar(2);
    ImGui::EndGroup();
    ImGui::PopID();
    return off;
}

float pin_width(const Ui& ui, const Metal& metal) {
    return ImGui::CalcTextSize(metal.name.c_str()).x + ImGui::CalcTextSize("×").x +
           ui.px(14 + 2 + swatch_width + 2 + 16);
}

/// Those without room in the strip, in a list.
void draw_more(Ui& ui, const std::vector<std::string>& pins, std::size_t from) {
    const std::string words = "+" + std::to_string(pins.size() - from);
    if (ImGui::Button((words + "##more").c_str())) ImGui::OpenPopup("more pins");
    ui.probe.item("pins.more", words);
    ImGui::SetNextWindowSizeConstraints({0, 0}, {FLT_MAX, ImGui::GetIO().DisplaySize.y * 0.6F}); // beyond it scrolls
    if (!ImGui::BeginPopup("more pins")) return;
    for (std::size_t i = from; i < pins.size(); ++i) {
        const Metal* metal = ui.session.catalogue.metal(pins[i]);
        if (metal && draw_pin(ui, *metal, mark_of(ui.view(), pins[i]))) toggle_pin(ui.view(), pins[i]);
    }
    ImGui::EndPopup();
}

} // namespace

void draw_pins(Ui& ui) {
    const std::vector<std::string> pins = ui.view().pins; // a click may change it
    ImGui::AlignTextToFramePadding();
    if (ui.narrow())
        small_dim_text(ui, pins.empty() ? "Nothing pinned: pin metals in Metals or Rank." : "");
    else
        small_dim_text(
            ui, pins.empty()
                    ? "Nothing pinned. Pin metals in Metals or Rank (Ctrl+P): they appear here and in every view."
                    : "Pinned");
    const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    const int most_rows = ui.narrow() ? 1 : 2;
    const float room_for_more = ui.px(64);
    int row = 1;
    for (std::size_t i = 0; i < pins.size(); ++i) {
        const Metal* metal = ui.session.catalogue.metal(pins[i]);
        if (!metal) continue;
        ImGui::SameLine(0, ui.narrow() && i == 0 ? 0 : ui.px(10));
        const bool last = row == most_rows && i + 1 < pins.size();
        const float end = ImGui::GetCursorScreenPos().x + pin_width(ui, *metal) + (last ? room_for_more : 0);
        if (end > right && row == most_rows) return draw_more(ui, pins, i);
        if (end > right) {
            ImGui::NewLine();
            ++row;
        }
        if (draw_pin(ui, *metal, mark_of(ui.view(), pins[i]))) toggle_pin(ui.view(), pins[i]);
    }
}

} // namespace pourbook

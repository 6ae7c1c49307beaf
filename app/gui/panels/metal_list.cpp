#include "gui/panels/panels.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/take_keyboard.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "gui/widgets/value_label.hpp"

#include <imgui_stdlib.h>

#include <algorithm>

namespace pourbook {
namespace {

constexpr int rows_a_page = 12;

int steps_asked() {
    const auto key = [](ImGuiKey k) { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(k)); };
    if (key(ImGuiKey_DownArrow)) return 1;
    if (key(ImGuiKey_UpArrow)) return -1;
    if (key(ImGuiKey_PageDown)) return rows_a_page;
    if (key(ImGuiKey_PageUp)) return -rows_a_page;
    return 0;
}

int place_of(const std::vector<const Metal*>& found, const std::string& slug) {
    const auto at = std::find_if(found.begin(), found.end(), [&](const Metal* m) { return m->slug == slug; });
    return at == found.end() ? -1 : static_cast<int>(at - found.begin());
}

void select(Ui& ui, const std::vector<const Metal*>& found, int place) {
    if (found.empty()) return;
    ui.view().selected =
        found[static_cast<std::size_t>(std::clamp(place, 0, static_cast<int>(found.size()) - 1))]->slug;
    ui.session.passing.scroll_to_selected = true;
}

/// Arrows move, Return pins; Space pins too where no text is being typed.
void list_keys(Ui& ui, const std::vector<const Metal*>& found, bool typing) {
    if (const int steps = steps_asked()) select(ui, found, place_of(found, ui.view().selected) + steps);
    const bool space = !typing && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Space), false);
    if (!typing && (space || ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false)))
        toggle_pin(ui.view(), ui.view().selected);
}

/// Marks the up and down keys as used by the field, so that they move the selection instead of the focus.
int keep_arrows(ImGuiInputTextCallbackData*) {
    return 0;
}

bool draw_find(Ui& ui, float width) {
    if (ui.session.passing.focus_find) take_keyboard();
    ImGui::SetNextItemWidth(width);
    const std::string before = ui.view().find;
    const bool entered = ImGui::InputTextWithHint(
        "##find", fitted_hint("find a metal: name, alias, designation (Ctrl+F)", width).c_str(), &ui.view().find,
        ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_CallbackHistory | ImGuiInputTextFlags_AutoSelectAll,
        keep_arrows);
    const bool active = ImGui::IsItemActive();
    if (active) ui.session.passing.focus_find = false; // a newer window library gives it frames later
    ui.probe.item("find", ui.view().find);
    const auto& found = ui.session.found();
    if (ui.view().find != before && place_of(found, ui.view().selected) != 0) select(ui, found, 0);
    if (entered) {
        toggle_pin(ui.view(), ui.view().selected);
        ui.session.passing.focus_find = true; // stay in the field
    }
    return active;
}

void draw_melting(Ui& ui, const Metal& metal, const MetalFigures& figures) {
    const Property &solidus = *ui.session.catalogue.property("solidus"),
                   &liquidus = *ui.session.catalogue.property("liquidus");
    const bool none = !figures.solidus && !figures.liquidus;
    const bool one = figures.solidus && figures.liquidus &&
                     shown_value(solidus, *figures.solidus, ui.session.units()) ==
                         shown_value(liquidus, *figures.liquidus, ui.session.units());
    if (!one && !none) {
        value_label(ui, "solidus." + metal.slug, metal, solidus, figures.solidus, {.unit = false, .opens = false});
        ImGui::SameLine(0, 0);
        text("–");
        ImGui::SameLine(0, 0);
    }
    value_label(ui, "liquidus." + metal.slug, metal, liquidus, figures.liquidus, {.unit = false, .opens = false});
}

void draw_row(Ui& ui, const Metal& metal, bool whole) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (pin_button(ui, "list.pin." + metal.slug, metal.slug)) toggle_pin(ui.view(), metal.slug);
    ImGui::SameLine(0, ui.px(2));
    metal_swatch(ui, metal, ImGui::GetTextLineHeight());
    ImGui::TableNextColumn();
    const bool current = ui.view().selected == metal.slug;
    const std::string name = fitted(metal.name, ImGui::GetContentRegionAvail().x);
    if (ImGui::Selectable((name + "##" + metal.slug).c_str(), current,
                          ImGuiSelectableFlags_SpanAllColumns | ImGuiSelectableFlags_AllowItemOverlap)) {
        ui.view().selected = metal.slug;
        ui.session.passing.sheet_open = true;
    }
    ui.probe.item("list." + metal.slug, metal.name);
    if (name != metal.name && ImGui::IsItemHovered() &&
        (ImGui::TableGetColumnFlags() & ImGuiTableColumnFlags_IsHovered))
        hover_text(ui, metal.name);
    if (whole) {
        ImGui::TableNextColumn();
        small_dim_text(ui, metal.family);
    }
    const MetalFigures& figures = ui.session.figures(metal);
    ImGui::TableNextColumn();
    draw_melting(ui, metal, figures);
    if (!whole && ui.narrow()) return; // names go before it
    ImGui::TableNextColumn();
    value_label(ui, "conductivity." + metal.slug, metal, *ui.session.catalogue.property("conductivity"),
                figures.conductivity, {.unit = false, .right = true, .opens = false});
}

/// Only the rows in sight; the selected one comes into sight when it was chosen elsewhere, but for a narrow window,
/// whose page begins at the field to find.
void draw_rows(Ui& ui, const std::vector<const Metal*>& found, bool whole) {
    bool& scroll = ui.session.passing.scroll_to_selected;
    const int selected = scroll && !ui.narrow() ? place_of(found, ui.view().selected) : -1;
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(found.size()));
    if (selected >= 0) clipper.ForceDisplayRangeByIndices(selected, selected + 1);
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            draw_row(ui, *found[static_cast<std::size_t>(i)], whole);
            if (i != selected) continue;
            ImGui::SetScrollHereY(0.4F);
            scroll = false;
        }
}

void table_head(Ui& ui, bool whole) {
    const Catalogue& c = ui.session.catalogue;
    const std::string melts = "melts, " + shown_unit(*c.property("liquidus"), ui.session.units());
    const std::string conducts = shown_unit(*c.property("conductivity"), ui.session.units());
    ImGui::TableSetupScrollFreeze(0, 1);
    ImGui::TableSetupColumn("##pin", ImGuiTableColumnFlags_WidthFixed, ui.px(22 + 2 + swatch_width));
    ImGui::TableSetupColumn("metal", ImGuiTableColumnFlags_WidthStretch, 2.2F);
    if (whole) ImGui::TableSetupColumn("family", ImGuiTableColumnFlags_WidthStretch, 1.1F);
    constexpr double melts_room = 142; // of two remembered ends
    const bool fewest = !whole && ui.narrow();
    if (fewest)
        ImGui::TableSetupColumn(melts.c_str(), ImGuiTableColumnFlags_WidthFixed, ui.px(melts_room));
    else
        ImGui::TableSetupColumn(melts.c_str(), ImGuiTableColumnFlags_WidthStretch, 1.6F);
    if (!fewest) ImGui::TableSetupColumn(conducts.c_str(), ImGuiTableColumnFlags_WidthFixed, ui.px(64));
    header_row(ui, whole ? 4 : 3);
}

void draw_table(Ui& ui, const std::vector<const Metal*>& found, bool whole) {
    const ListRows rows;
    const ImGuiTableFlags scrolls = ui.narrow() ? 0 : ImGuiTableFlags_ScrollY; // there the page does
    const int columns = whole ? 5 : ui.narrow() ? 3 : 4;
    const char* id = whole ? "metals" : ui.narrow() ? "fewest" : "few";
    if (!ImGui::BeginTable(id, columns, scrolls | ImGuiTableFlags_RowBg)) return;
    table_head(ui, whole);
    draw_rows(ui, found, whole);
    ImGui::EndTable();
}

} // namespace

void draw_metal_list(Ui& ui, float width) {
    const Catalogue& catalogue = ui.session.catalogue;
    const bool typing = draw_find(ui, width);
    const auto& found = ui.session.found();
    small_dim_text(ui, std::to_string(found.size()) + " of " + std::to_string(catalogue.metals.size()) + " metals" +
                           (ui.narrow() ? "" : " · arrows move, Return pins"));
    if (found.empty())
        dim_text(ui, catalogue.metals.empty() ? "The reference is empty."
                                              : "No metal has all these words in its name, aliases or designations.");
    const bool drawable =
        catalogue.property("solidus") && catalogue.property("liquidus") && catalogue.property("conductivity");
    if (found.empty() || !drawable) return;
    draw_comparison_row(ui, "metals", found);
    begin_panel(ui, "rows", {0, 0}, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    if (ImGui::IsWindowFocused(ImGuiFocusedFlags_ChildWindows) || typing) {
        ImGui::GetIO().ConfigFlags &=
            ~ImGuiConfigFlags_NavEnableKeyboard; // arrows move the selection here, not a focus mark
        list_keys(ui, found, typing);
    }
    constexpr double least_whole = 460; // in less, beside the evidence, names go before families
    const bool whole = ImGui::GetContentRegionAvail().x >= ui.px(least_whole);
    draw_table(ui, found, whole);
    end_panel(ui);
}

} // namespace pourbook

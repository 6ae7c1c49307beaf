#include "gui/panels/panels.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/metals/find_words.hpp"

#include <imgui_stdlib.h>

#include <algorithm>

namespace pourbook {
namespace {

void draw_row(Ui& ui, const Reference& r) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool current = ui.view().source == r.key;
    const std::string name = fitted(short_source(r), ImGui::GetContentRegionAvail().x) + "##" + r.key;
    if (ImGui::Selectable(name.c_str(), current, ImGuiSelectableFlags_SpanAllColumns))
        ui.view().source = current ? "" : r.key;
    ui.probe.item("source." + r.key, r.key);
    if (ImGui::IsItemHovered()) hover_text(ui, r.key + "\n" + reference_text(r));
    ImGui::TableNextColumn();
    dim_text(ui, fitted(r.kind, ImGui::GetContentRegionAvail().x));
    ImGui::TableNextColumn();
    dim_text(ui, r.reliability);
    ImGui::TableNextColumn();
    text_right(std::to_string(ui.session.sources().count(r.key)));
}

bool is_found(const Reference& r, const std::string& words) {
    return words.empty() || holds_every_word(r.key + " " + r.full() + " " + r.kind, words);
}

std::vector<const Reference*> found_in(const Catalogue& catalogue, const std::string& words) {
    std::vector<const Reference*> found;
    for (const Reference& r : catalogue.references)
        if (is_found(r, words)) found.push_back(&r);
    return found;
}

/// Only the rows in sight.
void draw_rows(Ui& ui, const std::vector<const Reference*>& found) {
    ImGuiListClipper rows;
    rows.Begin(static_cast<int>(found.size()));
    while (rows.Step())
        for (int i = rows.DisplayStart; i < rows.DisplayEnd; ++i) draw_row(ui, *found[static_cast<std::size_t>(i)]);
}

void draw_list(Ui& ui) {
    ImGui::SetNextItemWidth(-1);
    const std::string hint = fitted_hint("find a source: key, author, title, kind", ImGui::GetContentRegionAvail().x);
    ImGui::InputTextWithHint("##find_source", hint.c_str(), &ui.view().find_source);
    ui.probe.item("find_source", ui.view().find_source);
    table_row(ui, "sources", [&](const DocumentSetting& setting) {
        return document_of(found_in(setting.catalogue, ui.view().find_source), setting);
    });
    if (!ImGui::BeginTable("sources", 4, ImGuiTableFlags_ScrollY | ImGuiTableFlags_RowBg)) return;
    ImGui::TableSetupScrollFreeze(0, 1);
    ImGui::TableSetupColumn("source", ImGuiTableColumnFlags_WidthStretch, 2);
    ImGui::TableSetupColumn("kind", ImGuiTableColumnFlags_WidthStretch, 1.3F);
    ImGui::TableSetupColumn("grade", ImGuiTableColumnFlags_WidthFixed, ui.px(44));
    ImGui::TableSetupColumn("taken", ImGuiTableColumnFlags_WidthFixed, ui.px(48));
    header_row(ui, 3);
    draw_rows(ui, found_in(ui.session.catalogue, ui.view().find_source));
    ImGui::EndTable();
}

} // namespace

void draw_sources(Ui& ui) {
    const Reference* reference = ui.session.catalogue.reference(ui.view().source);
    if (ui.narrow() && reference) { // in place of the list
        if (word_button(ui, "sources.list", "← all sources", false)) ui.view().source.clear();
        return draw_source(ui, *reference);
    }
    const float usual = std::clamp(ImGui::GetContentRegionAvail().x * 0.38F, ui.px(360), ui.px(560));
    begin_panel(ui, "keys", {split_width(ui, "sources", usual, 330, 380), 0});
    draw_list(ui);
    end_panel(ui);
    split_edge(ui, "sources");
    begin_panel(ui, "source");
    if (reference)
        draw_source(ui, *reference);
    else
        draw_coverage(ui);
    end_panel(ui);
}

} // namespace pourbook

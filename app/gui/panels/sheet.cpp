#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/theme.hpp"
#include "gui/widgets/value_label.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "questions/metals/property_groups.hpp"

#include <algorithm>

namespace pourbook {
namespace {

void draw_head(Ui& ui, const SheetResult& sheet) {
    const Metal& metal = *sheet.metal;
    ImGui::PushFont(ui.fonts.heading); // the mark stands in a line of the heading's height
    if (pin_button(ui, "sheet.pin", metal.slug)) toggle_pin(ui.view(), metal.slug);
    ImGui::PopFont();
    ImGui::SameLine();
    heading(ui, metal.name);
    ui.probe.say("sheet.metal", metal.slug);
    std::string kind = metal.kind + " · " + metal.family;
    if (!metal.designations.empty()) kind += " · " + joined(metal.designations);
    if (!metal.aliases.empty()) kind += " · also " + joined(metal.aliases);
    const TextLook look(ui.fonts.small, ui.colours().dim);
    wrapped_text(kind, ui.colours().dim);
    std::string reference = "reference condition: " + metal.reference_condition;
    if (!metal.reference_temper.empty()) reference += " " + metal.reference_temper;
    wrapped_text(std::string(state_word(sheet.conditions)) + " at " + celsius_text(sheet.conditions.temperature_K) +
                     " · " + reference,
                 ui.colours().dim);
}

void draw_cautions(Ui& ui, const SheetResult& sheet) {
    if (sheet.cautions.empty()) return;
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().warning);
        text("Hazards");
    }
    ImGui::SameLine();
    small_dim_text(ui, "defer to local codes and licensed practice");
    int number = 0;
    for (const Caution* c : sheet.cautions) {
        wrapped_text(c->element + ": " + c->text, ui.colours().ink);
        ui.probe.item("hazard." + std::to_string(number++), c->text);
        source_chip(ui, "caution." + c->element, c->citation.source);
        if (c->citation.how_known != HowKnown::memory) continue;
        ImGui::SameLine();
        const TextLook look(ui.fonts.italic, ui.colours().dim);
        text("remembered, not reread");
    }
}

std::string row_condition(const Evaluated& value) {
    std::string text = value.condition == "unstated" ? "" : value.condition;
    if (!value.condition_matches) text += " *";
    if (value.basis != Basis::cited) return text + (text.empty() ? "" : ", ") + name_of(value.basis);
    if (value.how_known == HowKnown::memory) text += text.empty() ? "remembered" : ", remembered";
    if (value.how_known == HowKnown::computed) text += text.empty() ? "computed" : ", computed";
    return text;
}

void draw_value_row(Ui& ui, const Metal& metal, const SheetRow& row, bool whole) {
    const std::string& id = row.property->id;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (ui.narrow()) ImGui::PushTextWrapPos(0);
    text(shown_label(*row.property, ui.session.units()));
    if (ui.narrow()) ImGui::PopTextWrapPos();
    if (ImGui::IsItemHovered()) hover_text(ui, row.property->label + "\n" + row.property->meaning);
    ImGui::TableNextColumn();
    value_label(ui, "sheet." + id, metal, *row.property, row.value, {.plus_minus = true});
    if (!whole) return;
    ImGui::TableNextColumn();
    if (row.value) small_dim_text(ui, row_condition(*row.value));
    ImGui::TableNextColumn();
    if (row.value && !row.value->sources.empty()) source_chip(ui, "sheet.source." + id, row.value->sources.front().key);
}

/// What a caster asks first comes first; rows without a value are left for the line below.
std::vector<const SheetRow*> rows_in_order(Ui& ui, const SheetResult& sheet) {
    std::vector<PropertyGroup> groups = property_groups(ui.session.catalogue);
    std::stable_partition(groups.begin(), groups.end(),
                          [](const PropertyGroup& g) { return g.name.starts_with("melts"); });
    std::vector<const SheetRow*> rows;
    for (const PropertyGroup& group : groups)
        for (const Property* property : group.properties)
            for (const SheetRow& row : sheet.rows)
                if (row.property == property && row.value) rows.push_back(&row);
    return rows;
}

/// One after the other on as many lines as it takes; each says on hover why.
void draw_without_value(Ui& ui, const SheetResult& sheet) {
    const TextLook look(ui.fonts.small, ui.colours().dim);
    const float gap = ui.px(theme::near);
    bool first = true;
    for (const SheetRow& row : sheet.rows) {
        if (row.value) continue;
        if (first) text("no value:");
        first = false;
        const std::string label = shown_label(*row.property, ui.session.units());
        ImGui::SameLine(0, gap);
        if (ImGui::GetContentRegionAvail().x < ImGui::CalcTextSize(label.c_str()).x) ImGui::NewLine();
        text(label);
        ui.probe.item("sheet." + row.property->id, "no value");
        if (ImGui::IsItemHovered()) hover_text(ui, label + ": " + row.value.problem().text);
    }
}

void draw_values(Ui& ui, const SheetResult& sheet) {
    constexpr double least_whole = 600; // in less, beside the evidence, the value goes before its condition and source
    const bool whole = ImGui::GetContentRegionAvail().x >= ui.px(least_whole);
    if (!ImGui::BeginTable(whole ? "values" : "few", whole ? 4 : 2, ImGuiTableFlags_RowBg)) return;
    float labels = 0, sources = 0;
    for (const SheetRow& row : sheet.rows) {
        labels = std::max(labels, ImGui::CalcTextSize(shown_label(*row.property, ui.session.units()).c_str()).x);
        if (row.value && !row.value->sources.empty())
            sources = std::max(sources, chip_width(ui, row.value->sources.front().key));
    }
    constexpr double values_room = 184; // where labels give way
    if (!whole && ui.narrow()) {
        ImGui::TableSetupColumn("property", ImGuiTableColumnFlags_WidthStretch);
        ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthFixed, ui.px(values_room));
    } else {
        ImGui::TableSetupColumn("property", ImGuiTableColumnFlags_WidthFixed, labels);
        ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch, 1.6F);
    }
    if (whole) ImGui::TableSetupColumn("condition", ImGuiTableColumnFlags_WidthStretch, 0.95F);
    if (whole) ImGui::TableSetupColumn("source", ImGuiTableColumnFlags_WidthFixed, sources);
    for (const SheetRow* row : rows_in_order(ui, sheet)) draw_value_row(ui, *sheet.metal, *row, whole);
    ImGui::EndTable();
}

void draw_composition(Ui& ui, const Metal& metal) {
    if (metal.composition.empty()) return;
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("Composition");
    }
    if (!metal.composition_citation.source.empty()) {
        ImGui::SameLine();
        source_chip(ui, "composition.source", metal.composition_citation.source);
    }
    if (!ImGui::BeginTable("composition", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit)) return;
    ImGui::TableSetupColumn("element", 0, ui.px(80));
    ImGui::TableSetupColumn("nominal", 0, ui.px(110));
    ImGui::TableSetupColumn("limits", 0, ui.px(200));
    for (const Portion& p : metal.composition) {
        char percent[32];
        std::snprintf(percent, sizeof percent, "%g wt %%", p.wt_percent);
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        text(p.element);
        ImGui::TableNextColumn();
        text(percent);
        ImGui::TableNextColumn();
        dim_text(ui, p.limits.empty() ? "" : "limits " + p.limits);
    }
    ImGui::EndTable();
}

} // namespace

void draw_sheet(Ui& ui) {
    if (ui.view().selected.empty()) {
        dim_text(ui, "Choose a metal in the list: its values, sources and hazards appear here.");
        return;
    }
    const Result<SheetResult>& sheet = ui.session.sheet(ui.view().selected);
    if (!sheet) {
        warning_text(ui, sheet.problem().text);
        return;
    }
    draw_head(ui, *sheet);
    if (!sheet->metal->note.empty()) wrapped_text(sheet->metal->note, ui.colours().ink);
    draw_cautions(ui, *sheet);
    ImGui::Spacing();
    draw_values(ui, *sheet);
    draw_without_value(ui, *sheet);
    draw_comparison_row(ui, "sheet", {sheet->metal});
    {
        const TextLook look(ui.fonts.small, ui.colours().dim);
        wrapped_text("○ remembered, not read in a text · * the asked condition is not cited · hover a number for its "
                     "trail, click it for its source",
                     ui.colours().dim);
    }
    draw_composition(ui, *sheet->metal);
}

} // namespace pourbook

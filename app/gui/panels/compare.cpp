#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr int most_columns = 40; // what a table of the toolkit holds safely

void draw_head(Ui& ui, const std::vector<const Metal*>& metals) {
    ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
    ImGui::TableNextColumn();
    for (std::size_t i = 0; i < metals.size(); ++i) {
        ImGui::TableNextColumn();
        const float name = ImGui::CalcTextSize(metals[i]->name.c_str()).x;
        ImGui::SetCursorPosX(ImGui::GetCursorPosX() +
                             std::max(0.0F, ImGui::GetContentRegionAvail().x - name - ui.px(16)));
        pin_mark(ui, mark_of(ui.view(), metals[i]->slug), ImGui::GetTextLineHeight());
        ImGui::SameLine(0, ui.px(2));
        if (ImGui::Selectable((metals[i]->name + "##head").c_str(), false, 0, {name, 0}))
            show_metal(ui.session, metals[i]->slug);
        ui.probe.item("compare.head." + metals[i]->slug, metals[i]->name);
    }
}

void draw_row(Ui& ui, const std::vector<const Metal*>& metals, std::size_t row) {
    const Property& property = ui.session.catalogue.properties[row];
    const std::string unit = shown_unit(property, ui.session.units());
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    text(shown_label(property, ui.session.units()));
    if (ImGui::IsItemHovered()) hover_text(ui, property.label + "\n" + property.meaning);
    if (!unit.empty()) {
        ImGui::SameLine();
        dim_text(ui, unit);
    }
    for (const Metal* m : metals) {
        ImGui::TableNextColumn();
        const Result<SheetResult>& sheet = ui.session.sheet(m->slug);
        if (sheet)
            value_label(ui, "compare." + m->slug + "." + property.id, *m, property, sheet->rows[row].value,
                        {.unit = false, .right = true});
    }
}

} // namespace

void draw_comparison_row(Ui& ui, const std::string& id, const std::vector<const Metal*>& metals) {
    table_row(ui, id, [&](const DocumentSetting& setting) {
        CompareRequest request{{}, {}, ui.session.conditions()};
        for (const Metal* m : metals) request.metals.push_back(m->slug);
        for (const Property& p : setting.catalogue.properties) request.properties.push_back(p.id);
        const Result<CompareResult> result = compare(setting.catalogue, request);
        return result ? document_of(*result, setting) : Document{};
    });
}

void draw_compare(Ui& ui) {
    std::vector<const Metal*> metals;
    for (const std::string& slug : ui.view().pins)
        if (const Metal* m = ui.session.catalogue.metal(slug); m && metals.size() < most_columns) metals.push_back(m);
    if (metals.empty()) {
        dim_text(ui, "Pin two or more metals: their properties appear here side by side.");
        return;
    }
    if (metals.size() > 1) draw_versus(ui);
    small_dim_text(ui, "at " + temperature_text(ui.session.conditions().temperature_K) +
                           " · ○ remembered · hover a number for its trail, click it for its source");
    draw_comparison_row(ui, "comparison", metals);
    constexpr ImGuiTableFlags flags =
        ImGuiTableFlags_ScrollX | ImGuiTableFlags_ScrollY | ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit;
    if (!ImGui::BeginTable("compared", static_cast<int>(metals.size()) + 1, flags)) return;
    ImGui::TableSetupScrollFreeze(1, 1);
    ImGui::TableSetupColumn("property", ImGuiTableColumnFlags_WidthFixed, ui.px(330));
    for (const Metal* m : metals)
        ImGui::TableSetupColumn(m->slug.c_str(), ImGuiTableColumnFlags_WidthFixed,
                                std::max(ui.px(130), ImGui::CalcTextSize(m->name.c_str()).x + ui.px(20)));
    draw_head(ui, metals);
    for (std::size_t row = 0; row < ui.session.catalogue.properties.size(); ++row) draw_row(ui, metals, row);
    ImGui::EndTable();
}

} // namespace pourbook

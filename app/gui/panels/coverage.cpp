#include "answers/parts/citation.hpp"
#include "core/quantity/format.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"

namespace pourbook {
namespace {

void draw_counts(const Ui& ui, const CheckResult& c) {
    const auto n = [](std::size_t x) { return std::to_string(x); };
    const auto say = [&](const std::string& line) { wrapped_text(line, ui.colours().ink); };
    say(n(c.metals) + " metals: " + n(c.elements) + " elements and " + n(c.alloys) + " alloys");
    say(n(c.values) + " published values in " + n(c.records) + " records, " + n(c.values_read) +
        " of them read in a text");
    say(n(c.references) + " sources, " + n(c.prices) + " prices");
    say(n(c.core_answers) + " core properties answered at 20 °C, " + n(c.core_answers_read) +
        " from a text that was read");
    if (c.without_source > 0) warning_text(ui, n(c.without_source) + " records have no source");
}

void draw_conflict(Ui& ui, const Conflict& c) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const std::string id = c.metal->slug + "." + c.property->id;
    const auto as_far_as_it_goes = [](const std::string& words) {
        return fitted(words, ImGui::GetContentRegionAvail().x);
    };
    if (ImGui::Selectable((as_far_as_it_goes(c.metal->name) + "##" + id).c_str()))
        show_metal(ui.session, c.metal->slug);
    if (ImGui::IsItemHovered()) hover_text(ui, c.metal->name + "\nopen its sheet");
    ImGui::TableNextColumn();
    text(as_far_as_it_goes(c.property->label));
    ImGui::TableNextColumn();
    value_label(ui, "conflict." + id, *c.metal, *c.property, c.value, {.unit = !ui.narrow()});
    ImGui::TableNextColumn();
    text_right(significant(c.spread_percent, 2) + " %");
}

void draw_conflicts(Ui& ui, const CheckResult& check) {
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("Where sources disagree most");
    }
    if (check.conflicts.empty() || !ImGui::BeginTable("conflicts", 4, ImGuiTableFlags_RowBg)) return;
    ImGui::TableSetupColumn("metal", ImGuiTableColumnFlags_WidthStretch, 1.6F);
    ImGui::TableSetupColumn("property", ImGuiTableColumnFlags_WidthStretch, 2);
    ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch, 1.4F);
    ImGui::TableSetupColumn("spread", ImGuiTableColumnFlags_WidthFixed, ui.px(70));
    ImGuiListClipper rows; // only those in sight
    rows.Begin(static_cast<int>(check.conflicts.size()));
    while (rows.Step())
        for (int i = rows.DisplayStart; i < rows.DisplayEnd; ++i)
            draw_conflict(ui, check.conflicts[static_cast<std::size_t>(i)]);
    ImGui::EndTable();
}

} // namespace

void draw_coverage(Ui& ui) {
    heading(ui, "What the reference holds");
    ui.probe.say("source.shown", "");
    small_dim_text(ui, "choose a source in the list to see what was taken from it");
    const std::string cite = how_to_cite(ui.session.catalogue.data_version);
    wrapped_text("To cite: " + cite, ui.colours().dim);
    if (ImGui::SmallButton("Copy the citation")) ImGui::SetClipboardText(cite.c_str());
    ImGui::Spacing();
    const CheckResult* check = ui.session.self_check();
    if (!check) {
        dim_text(ui, "Counting …");
        return;
    }
    table_row(ui, "coverage", [&](const DocumentSetting& setting) { return document_of(*check, setting); });
    draw_counts(ui, *check);
    for (const std::string& fault : check->faults) warning_text(ui, fault);
    ImGui::Spacing();
    draw_conflicts(ui, *check);
}

} // namespace pourbook

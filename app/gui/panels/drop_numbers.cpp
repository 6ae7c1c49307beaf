#include "gui/actions/actions.hpp"
#include "gui/panels/drop_parts.hpp"
#include "gui/state/window_words.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/drop/cold_cautions.hpp"
#include "questions/drop/drop_figures.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string with_grounds(std::string words, const DropResult& result) {
    words += "\n\nRests on";
    for (const std::string& line : drop_grounds(result)) words += "\n" + line;
    return in_window(words);
}

/// A number that explains itself; a click opens the metal's source.
void draw_number(Ui& ui, const std::string& id, const DropFigure& figure, const DropResult& result) {
    text(figure.value);
    ui.probe.item(id, figure.value);
    if (!ImGui::IsItemHovered()) return;
    const std::string detail = figure.detail.empty() ? "" : " (" + figure.detail + ")";
    hover_text(ui, with_grounds(figure.label + ": " + figure.value + detail + "\n" + figure.meaning, result));
    const auto sources = drop_sources(result);
    if (!sources.empty() && ImGui::IsMouseClicked(0)) show_source(ui.session, sources.front());
}

/// Beside a figure, or below it in as many lines as it takes.
void draw_detail(Ui& ui, const std::string& detail) {
    if (!ui.narrow()) return small_fitted_text(ui, detail);
    if (detail.empty()) return;
    const TextLook look(ui.fonts.small, ui.colours().dim);
    wrapped_text(detail, ui.colours().dim);
}

void draw_chips(Ui& ui, const DropResult& result) {
    source_chips(ui, "drop.source", drop_sources(result));
}

void draw_notes(Ui& ui, const std::string& title, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    const bool open = folding_head(ui, title + " (" + std::to_string(lines.size()) + ")###" + title);
    ui.probe.item("drop." + title, std::to_string(lines.size()));
    if (!open) return;
    const TextLook look(ui.fonts.small, ui.colours().dim);
    for (const std::string& line : lines) wrapped_text("· " + line, ui.colours().dim);
}

/// Beside the race, where they can be read whole.
void draw_cold_cautions(Ui& ui) {
    if (!ui.view().drop.nitrogen || ui.view().drop.face != "race") return;
    for (const MagnetFigure* c : cold_cautions(ui.session.catalogue)) {
        wrapped_text("Caution: " + c->text, ui.colours().warning);
        ui.probe.say("drop.nitrogen.caution", c->text);
    }
    ImGui::Spacing();
}

std::vector<std::string> assumed(const DropResult& r) {
    std::vector<std::string> out = r.setup.assumptions;
    out.insert(out.end(), r.tube.notes.begin(), r.tube.notes.end());
    return out;
}

} // namespace

void draw_drop_numbers(Ui& ui, const DropResult& result) {
    if (result.tube.metal) {
        heading(ui, result.tube.metal->name);
        ImGui::SameLine(0, ui.px(8));
        dim_text(ui, state_word(result.conditions));
        ui.probe.say("drop.state", state_word(result.conditions));
    }
    const auto figures = drop_figures(ui.session.catalogue, result, ui.session.units());
    float widest = ui.px(92);
    for (const DropFigure& figure : figures) widest = std::max(widest, ImGui::CalcTextSize(figure.value.c_str()).x);
    const bool below = ui.narrow(); // the detail below its figure
    if (!ImGui::BeginTable("figures", below ? 2 : 3, ImGuiTableFlags_RowBg)) return;
    ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthFixed, ui.px(118));
    if (!below) ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthFixed, widest);
    ImGui::TableSetupColumn("detail", ImGuiTableColumnFlags_WidthStretch);
    for (const DropFigure& figure : figures) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        dim_text(ui, figure.label);
        ImGui::TableNextColumn();
        draw_number(ui, "drop." + figure.id, figure, result);
        if (!below) ImGui::TableNextColumn();
        draw_detail(ui, figure.detail);
        ui.probe.item("drop." + figure.id + ".detail", figure.detail);
    }
    ImGui::EndTable();
    draw_cold_cautions(ui);
    draw_notes(ui, "Left out by the model, and its size", result.left_out);
    draw_notes(ui, "Assumed", assumed(result));
    ImGui::Spacing();
    draw_chips(ui, result);
}

void draw_against(Ui& ui, const AgainstResult& result) {
    wrapped_text(result.sentence, ui.colours().ink);
    ui.probe.item("drop.sentence", result.sentence);
    if (ImGui::SmallButton("Copy the sentence")) ImGui::SetClipboardText(result.sentence.c_str());
    ui.probe.item("drop.copy", "Copy the sentence");
    ImGui::Spacing();
    if (!ImGui::BeginTable("against", 3, ImGuiTableFlags_RowBg)) return;
    ImGui::TableSetupColumn("##what", ImGuiTableColumnFlags_WidthFixed, ui.px(118));
    ImGui::TableSetupColumn("first", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("second", ImGuiTableColumnFlags_WidthStretch);
    header_row(ui, 3);
    const auto first = drop_figures(ui.session.catalogue, result.first, ui.session.units()),
               second = drop_figures(ui.session.catalogue, result.second, ui.session.units());
    for (std::size_t i = 0; i < first.size(); ++i) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        dim_text(ui, first[i].label);
        ImGui::TableNextColumn();
        draw_number(ui, "drop.first." + first[i].id, first[i], result.first);
        draw_detail(ui, first[i].detail);
        ImGui::TableNextColumn();
        draw_number(ui, "drop.second." + second[i].id, second[i], result.second);
        draw_detail(ui, second[i].detail);
    }
    ImGui::EndTable();
}

} // namespace pourbook

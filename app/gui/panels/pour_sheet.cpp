// The plan: the figures one reads first, each with its sources on hover, then the sheet as it is printed.
#include "core/quantity/format.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/explain.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"
#include "report/pour_report.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string explained(const casting::Traced& t) {
    std::string out = t.how + "\nhow known: " + how_known_text(t.how_known) + (t.estimated ? ", estimated" : "");
    if (!t.sources.empty()) out += "\n\nSources";
    for (const SourceValue& s : t.sources)
        out += "\n" + s.key + ", " + s.locator + ": " + s.printed + " (" + how_known_text(s.how_known) + ")";
    return out;
}

/// A figure to read from across the room, with its name above it.
void tile(Ui& ui, const std::string& id, const std::string& name, const std::string& figure, const std::string& hover) {
    ImGui::BeginGroup();
    small_dim_text(ui, name);
    heading(ui, figure);
    ImGui::EndGroup();
    ui.probe.item("pour." + id, figure);
    if (ImGui::IsItemHovered()) hover_text(ui, name + ": " + figure + "\n" + hover);
}

/// Beside the last one where there is room, else on the next line.
void place_tile(const Ui& ui, const std::string& figure) {
    ImGui::PushFont(ui.fonts.heading);
    const float width = ImGui::CalcTextSize(figure.c_str()).x;
    ImGui::PopFont();
    ImGui::SameLine(0, ui.px(28));
    if (ImGui::GetContentRegionAvail().x < width) ImGui::NewLine();
}

void draw_tiles(Ui& ui, const PourResult& plan, const Page& page) {
    bool first = true;
    for (const PageSection& section : page.sections) {
        if (section.figure.empty()) continue;
        const std::string& t = section.title;
        const casting::Traced* from = t == "Temperatures"                        ? &plan.heat.pour
                                      : t == "Charge"                            ? &plan.density
                                      : t == "Pattern" && plan.contraction       ? &plan.contraction->strain
                                      : t == "Feeder"                            ? &plan.feeding.share
                                      : t == "Heat and cost" && plan.money.price ? &*plan.money.price
                                                                                 : nullptr;
        if (!first) place_tile(ui, section.figure);
        first = false;
        tile(ui, t, t, section.figure, from ? explained(*from) : "");
    }
}

void draw_table(Ui& ui, const Table& table, const std::string& id) {
    constexpr ImGuiTableFlags flags = ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit;
    if (!ImGui::BeginTable(id.c_str(), static_cast<int>(table.columns.size()), flags)) return;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        float width = ImGui::CalcTextSize(table.columns[i].title.c_str()).x;
        for (const auto& row : table.rows) width = std::max(width, ImGui::CalcTextSize(row[i].c_str()).x);
        ImGui::TableSetupColumn(table.columns[i].title.c_str(), ImGuiTableColumnFlags_WidthFixed, width);
    }
    header_row(ui, 1);
    for (const auto& row : table.rows) {
        ImGui::TableNextRow();
        for (std::size_t i = 0; i < row.size(); ++i) {
            ImGui::TableNextColumn();
            table.columns[i].right ? text_right(row[i]) : text(row[i]);
        }
    }
    ImGui::EndTable();
}

void draw_block(Ui& ui, const PageBlock& block, const std::string& id) {
    const Colour ink = ui.colours().ink;
    switch (block.kind) {
    case PageBlock::Kind::table:
        draw_table(ui, block.table, id);
        return;
    case PageBlock::Kind::blanks:
        return; // for paper
    case PageBlock::Kind::caution: {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        ImGui::Indent(ui.px(12));
        wrapped_text(block.text, ink);
        ImGui::Unindent(ui.px(12));
        ImGui::GetWindowDrawList()->AddRectFilled(low, {low.x + ui.px(3), ImGui::GetItemRectMax().y},
                                                  u32(ui.colours().warning));
        return;
    }
    case PageBlock::Kind::tick:
        wrapped_text("□ " + block.text, ink);
        return;
    case PageBlock::Kind::bullet:
        wrapped_text("· " + block.text, ink);
        return;
    case PageBlock::Kind::line:
        wrapped_text(block.text, ink);
        return;
    }
}

void draw_section(Ui& ui, const PageSection& section) {
    if (section.title == "What happened") return; // filled in on paper, entered in Trials
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong,
                            section.title == "Cautions first" ? ui.colours().warning : ui.colours().ink);
        text(section.title + (section.figure.empty() ? "" : ": " + section.figure));
    }
    int number = 0;
    for (const PageBlock& block : section.blocks) draw_block(ui, block, section.title + std::to_string(number++));
}

void draw_sources_used(Ui& ui, const PourResult& plan) {
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("Sources");
    }
    const float right = ImGui::GetWindowContentRegionMax().x;
    for (const std::string& key : source_keys(plan)) {
        const float width = ImGui::CalcTextSize(key.c_str()).x + ui.px(24);
        if (ImGui::GetCursorPosX() + width > right) ImGui::NewLine();
        source_chip(ui, "pour.source." + key, key);
        ImGui::SameLine(0, ui.px(6));
    }
    ImGui::NewLine();
}

} // namespace

void draw_pour_sheet(Ui& ui, const PourResult& plan) {
    const Page page = in_print(pour_page(plan, ui.session.catalogue, ui.session.units()));
    heading(ui, page.title);
    for (const std::string& line : page.subtitle) dim_text(ui, line);
    ImGui::Spacing();
    draw_tiles(ui, plan, page);
    for (const PageSection& section : page.sections) draw_section(ui, section);
    draw_sources_used(ui, plan);
}

} // namespace pourbook

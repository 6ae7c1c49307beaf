// The plan: the figures one reads first, each with its sources on hover, then the sheet as it is printed.
#include "answers/pour/pour_file.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"

#include <algorithm>

namespace pourbook {
namespace {

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
    const float gap = ui.px(28), right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    if (ImGui::GetItemRectMax().x + gap + width <= right) ImGui::SameLine(0, gap);
}

void draw_tiles(Ui& ui, const PourSheet& sheet) {
    bool first = true;
    for (const bool limits : {false, true}) // these last: they stand in words below
        for (const PageSection& section : sheet.page.sections) {
            if (section.figure.empty() || limits != (section.part == PageSection::Part::limits)) continue;
            const bool broken = limits && !sheet.refusal.empty(); // the plan itself is asked for without them
            const std::string figure = broken ? "not kept" : section.figure;
            if (!first) place_tile(ui, figure);
            first = false;
            tile(ui, section.title, section.title, figure, broken ? sheet.refusal : section.grounds);
        }
}

/// Of its texts, in the font at hand.
float column_width(const DataTable& table, std::size_t column) {
    float width = ImGui::CalcTextSize(table.columns[column].title.c_str()).x;
    for (const auto& row : table.rows) width = std::max(width, ImGui::CalcTextSize(row[column].text.c_str()).x);
    return width;
}

/// Of all columns side by side.
float table_width(const DataTable& table) {
    float width = 2 * ImGui::GetStyle().CellPadding.x; // at its sides
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        width += column_width(table, i) + 2 * ImGui::GetStyle().CellPadding.x;
    return width;
}

/// Where it is wider than the page its letters are small; what even then has no room scrolls sideways.
void draw_table(Ui& ui, const DataTable& table, const std::string& id) {
    const bool wider = table_width(table) > ImGui::GetContentRegionAvail().x;
    const TextLook look(wider ? ui.fonts.small : ui.fonts.body, ui.colours().ink);
    const bool sideways = table_width(table) > ImGui::GetContentRegionAvail().x;
    const ImGuiStyle& style = ImGui::GetStyle();
    const float height =
        static_cast<float>(table.rows.size() + 1) * (ImGui::GetTextLineHeight() + 2 * style.CellPadding.y);
    const ImVec2 size = sideways ? ImVec2{0, height + style.ScrollbarSize} : ImVec2{0, 0};
    const ImGuiTableFlags flags =
        ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit | (sideways ? ImGuiTableFlags_ScrollX : 0);
    if (!ImGui::BeginTable(id.c_str(), static_cast<int>(table.columns.size()), flags, size)) return;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        ImGui::TableSetupColumn(table.columns[i].title.c_str(), ImGuiTableColumnFlags_WidthFixed,
                                column_width(table, i));
    header_row(ui, 1);
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const auto& row = table.rows[r];
        ImGui::TableNextRow();
        for (std::size_t i = 0; i < row.size(); ++i) {
            ImGui::TableNextColumn();
            table.columns[i].number ? text_right(row[i].text) : text(row[i].text);
            ui.probe.item(id + "." + std::to_string(r) + "." + std::to_string(i), row[i].text);
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
        ui.probe.item(id, block.text);
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
        ui.probe.item(id, block.text);
        return;
    }
}

void draw_blocks(Ui& ui, const PageSection& section, bool tables, bool lines) {
    int number = 0;
    for (const PageBlock& block : section.blocks) {
        const std::string id = "pour." + section.title + "." + std::to_string(number++);
        if (block.kind == PageBlock::Kind::table ? tables : lines) draw_block(ui, block, id);
    }
}

/// What one asks first stands at the top: what the plan must heed, and the sizes of the pattern.
void draw_first(Ui& ui, const Page& page) {
    for (const PageSection& s : page.sections)
        if (s.part == PageSection::Part::limits) draw_blocks(ui, s, true, true);
    for (const PageSection& s : page.sections)
        if (s.part == PageSection::Part::pattern) draw_blocks(ui, s, true, false);
}

void draw_section(Ui& ui, const PageSection& section) {
    using Part = PageSection::Part;
    if (section.part == Part::limits) return;     // at the top
    if (section.part == Part::to_fill_in) return; // filled in on paper, entered in Trials
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, section.warns() ? ui.colours().warning : ui.colours().ink);
        text(section.title + (section.figure.empty() ? "" : ": " + section.figure));
    }
    draw_blocks(ui, section, section.part != Part::pattern, true);
}

void sheet_row(Ui& ui, const PourSheet& sheet) {
    Leaving l;
    l.what = "sheet";
    l.name = file_name_of(sheet.page.title);
    l.ending = ".pdf";
    l.endings = pour_sheet_endings;
    l.made = [&](const std::string& file) {
        return pour_sheet_file(sheet.plan, ui.session.catalogue, ui.session.units(), file, ui.session.date);
    };
    l.words = [&] { return page_text(sheet.page); };
    leave_row(ui, "pour.sheet", l);
}

} // namespace

void draw_pour_sheet(Ui& ui, const PourSheet& sheet) {
    if (ui.narrow()) {
        const TextLook look(ui.fonts.heading, ui.colours().ink);
        wrapped_text(sheet.page.title, ui.colours().ink);
    } else {
        heading(ui, sheet.page.title);
        ImGui::SameLine(0, ui.px(28));
    }
    const bool drawing = ui.view().pour_face == "drawing";
    const int face = choice(ui, "pour.face", {"drawing", "sheet"}, drawing ? 0 : 1);
    if (face >= 0) ui.view().pour_face = face == 0 ? "drawing" : "sheet";
    if (!sheet.refusal.empty()) {
        warning_text(ui, sheet.refusal);
        ui.probe.item("pour.refused", sheet.refusal);
        dim_text(ui, "The plan without that limit:");
    }
    if (!drawing)
        for (const std::string& line : sheet.page.subtitle) wrapped_text(line, ui.colours().dim);
    sheet_row(ui, sheet);
    ImGui::Spacing();
    draw_tiles(ui, sheet);
    if (drawing) return draw_pour_drawing(ui, sheet);
    draw_first(ui, sheet.page);
    for (const PageSection& section : sheet.page.sections) draw_section(ui, section);
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("Sources");
    }
    source_chips(ui, "pour.source", sheet.sources);
}

} // namespace pourbook

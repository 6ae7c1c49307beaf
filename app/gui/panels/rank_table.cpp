#include "core/quantity/format.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string chance_text(double p) {
    if (p <= 0) return "–";
    if (p < 0.01) return "< 1 %";
    return std::to_string(std::lround(p * 100)) + " %";
}

std::string ranks_text(const Place& p) {
    return p.rank_low == p.rank_high ? std::to_string(p.rank_low) : std::to_string(p.rank_low) + "–" + std::to_string(p.rank_high);
}

/// Figures that the interval supports, the same for all three numbers of a row.
std::string merit_text(double value, const Place& p) {
    return rounded_to(value, (p.high90 - p.low90) / 2, 4);
}

void column(const std::string& head, float width) {
    ImGui::TableSetupColumn(head.c_str(), ImGuiTableColumnFlags_WidthFixed, width);
}

/// Wide enough for a text like this one.
void column_like(const std::string& head, const char* widest) {
    column(head, std::max(ImGui::CalcTextSize(widest).x, ImGui::CalcTextSize(head.c_str(), nullptr, true).x));
}

/// The longest of the first and last medians stands for all.
std::string widest_merit(const RankResult& result) {
    const Place &first = result.ranked.front().place, &last = result.ranked.back().place;
    const std::string a = merit_text(first.median, first), b = merit_text(last.median, last);
    return a.size() > b.size() ? a : b;
}

void input_head(Ui& ui, const RankInput& input) {
    const Property* p = ui.session.catalogue.property(input.property);
    const std::string head = p ? p->symbol + ", " + shown_unit(*p, ui.session.units()) : input.property;
    column(head, std::max(ImGui::CalcTextSize("0000.00").x, ImGui::CalcTextSize(head.c_str()).x));
}

void draw_head(Ui& ui, const RankResult& result) {
    ImGui::TableSetupScrollFreeze(0, 1);
    column("##pin", ui.px(20));
    column_like("#", "000");
    ImGui::TableSetupColumn("metal", ImGuiTableColumnFlags_WidthStretch);
    column_like("median", widest_merit(result).c_str());
    column_like("90 %", (widest_merit(result) + "–" + widest_merit(result)).c_str());
    column_like("first", "100 %");
    column_like("ranks", "00–000");
    column_like("##marks", "≈○");
    for (const RankInput& input : result.ranked.front().inputs) input_head(ui, input);
    const TextLook look(ui.fonts.small, ui.colours().dim);
    ImGui::TableHeadersRow();
}

void draw_name(Ui& ui, const RankedMetal& r) {
    const bool clicked = ImGui::Selectable(("##row." + r.metal->slug).c_str(), ui.view().selected == r.metal->slug,
                                           ImGuiSelectableFlags_SpanAllColumns | ImGuiSelectableFlags_AllowItemOverlap);
    ui.probe.item("rank.row." + std::to_string(r.place.rank), r.metal->slug);
    if (clicked) {
        ui.view().selected = r.metal->slug;
        toggle_pin(ui.view(), r.metal->slug);
    }
    ImGui::SameLine(0, 0);
    text(r.metal->name);
}

void draw_marks(Ui& ui, const RankedMetal& r, const RankResult& result) {
    const auto& tied = result.ranked.front().place.tied_with;
    const bool tied_with_best = std::find(tied.begin(), tied.end(), r.metal->slug) != tied.end();
    ImGui::TableNextColumn();
    const std::string marks = std::string(tied_with_best ? "≈" : "") + (r.from_memory ? "○" : "");
    if (marks.empty()) return;
    dim_text(ui, marks);
    ui.probe.item("rank." + std::to_string(r.place.rank) + ".marks", marks);
    if (ImGui::IsItemHovered())
        hover_text(ui, std::string(r.metal->name) + (tied_with_best ? "\n≈ best: the data can't tell it from the first" : "") +
                           (r.from_memory ? "\n○ rests on a remembered value" : ""));
}

void cell(Ui& ui, const std::string& id, const std::string& words) {
    ImGui::TableNextColumn();
    text_right(words);
    ui.probe.item(id, words);
}

void draw_row(Ui& ui, const RankedMetal& r, const RankResult& result) {
    const Place& p = r.place;
    const std::string id = "rank." + std::to_string(p.rank);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (pin_button(ui, "rank.pin." + r.metal->slug, r.metal->slug)) toggle_pin(ui.view(), r.metal->slug);
    cell(ui, id + ".rank", std::to_string(p.rank));
    ImGui::TableNextColumn();
    draw_name(ui, r);
    cell(ui, id + ".median", merit_text(p.median, p));
    cell(ui, id + ".interval", merit_text(p.low90, p) + "–" + merit_text(p.high90, p));
    cell(ui, id + ".first", chance_text(p.p_first));
    cell(ui, id + ".ranks", ranks_text(p));
    draw_marks(ui, r, result);
    for (const RankInput& input : r.inputs) {
        const Property* property = ui.session.catalogue.property(input.property);
        if (!property) continue;
        ImGui::TableNextColumn();
        value_label(ui, id + "." + input.property, *r.metal, *property, input.value, {.unit = false, .right = true, .opens = false});
    }
}

} // namespace

void draw_rank_table(Ui& ui, const RankResult& result, ImVec2 size) {
    const int columns = 8 + static_cast<int>(result.ranked.front().inputs.size());
    constexpr ImGuiTableFlags flags = ImGuiTableFlags_ScrollY | ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit;
    const std::string unit = pretty_unit(result.unit);
    small_dim_text(ui, result.formula + (unit.empty() ? "" : " in " + unit) + (result.best_high ? ", highest" : ", lowest") + " first · click a row to pin");
    if (size.y > 0) size.y -= ImGui::GetTextLineHeightWithSpacing();
    if (!ImGui::BeginTable(("ranked." + std::to_string(columns)).c_str(), columns, flags, size)) return;
    draw_head(ui, result);
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(result.ranked.size()));
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) draw_row(ui, result.ranked[static_cast<std::size_t>(i)], result);
    ImGui::EndTable();
}

} // namespace pourbook

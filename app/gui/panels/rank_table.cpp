#include "core/quantity/format.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/rank/tube_columns.hpp"
#include "questions/say/shown_merit.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string chance_text(double p) {
    if (std::isnan(p) || p <= 0) return "–";
    if (p < 0.01) return "< 1 %";
    return std::to_string(std::lround(p * 100)) + " %";
}

std::string ranks_text(const Place& p) {
    if (p.rank_low == 0) return "–"; // not worked out this far down
    return p.rank_low == p.rank_high ? std::to_string(p.rank_low)
                                     : std::to_string(p.rank_low) + "–" + std::to_string(p.rank_high);
}

/// How merits are written in the table.
class Merits {
public:
    Merits(const Ui& ui, const RankResult& result)
        : shown_(ui.session.catalogue, result.formula, result.unit, ui.session.units()), result_(result) {}

    /// To the figures that the interval supports, the same for all three numbers of a row.
    std::string text(double value, const Place& p) const {
        return pretty_number(rounded_to(shown(value), std::abs(shown(p.high90) - shown(p.low90)) / 2, 4));
    }
    std::string interval(const Place& p) const {
        if (std::isnan(p.low90)) return "–";
        const bool falls = shown(p.high90) < shown(p.low90); // a resistivity shown as a conductivity
        return text(falls ? p.high90 : p.low90, p) + "–" + text(falls ? p.low90 : p.high90, p);
    }
    std::string unit() const { return pretty_unit(shown_.unit()); }

    /// The longest of the first and last rows stands for all.
    std::string widest() const {
        const Place &first = result_.ranked.front().place, &last = result_.ranked.back().place;
        const std::string a = text(first.median, first), b = text(last.median, last);
        return a.size() > b.size() ? a : b;
    }

private:
    double shown(double si) const { return shown_.number(si); }

    ShownMerit shown_;
    const RankResult& result_;
};

void column(const std::string& head, float width) {
    ImGui::TableSetupColumn(head.c_str(), ImGuiTableColumnFlags_WidthFixed, width);
}

/// Wide enough for a text like this one and for its own head.
void column_like(const Ui& ui, const std::string& head, const std::string& widest) {
    ImGui::PushFont(ui.fonts.small);
    const float own = ImGui::CalcTextSize(head.c_str(), nullptr, true).x;
    ImGui::PopFont();
    column(head, std::max(ImGui::CalcTextSize(widest.c_str()).x, own));
}

void input_head(Ui& ui, const RankInput& input) {
    const Property* p = ui.session.catalogue.property(input.property);
    const std::string head = p ? p->symbol + ", " + shown_unit(*p, ui.session.units()) : input.property;
    column_like(ui, head, "○ 00.00");
}

/// Of a goal with a fall: two columns about the tube; what is the same in every row is left out.
std::vector<TubeColumn> columns_of_tube(const Ui& ui, const RankResult& result) {
    if (!result.fall) return {};
    std::vector<TubeColumn> out = tube_columns(ui.session.catalogue, ui.session.units());
    std::erase_if(out, [&](const TubeColumn& c) { return c.held == result.fall->holding(); });
    return out;
}

/// With the tube's own columns there is room for what decides only.
bool has_column(const RankInput& input, const RankResult& result) {
    return !result.fall || input.property == "resistivity";
}

int input_columns(const RankResult& result) {
    const auto& inputs = result.ranked.front().inputs;
    return static_cast<int>(
        std::count_if(inputs.begin(), inputs.end(), [&](const RankInput& i) { return has_column(i, result); }));
}

void draw_head(Ui& ui, const RankResult& result, const Merits& merits, const std::vector<TubeColumn>& tube) {
    ImGui::TableSetupScrollFreeze(0, 1);
    column("##pin", ui.px(20));
    column_like(ui, "#", "000");
    ImGui::TableSetupColumn("metal", ImGuiTableColumnFlags_WidthStretch);
    column_like(ui, result.samples ? "median" : "value", merits.widest());
    column_like(ui, "90 %", merits.widest() + "–" + merits.widest());
    column_like(ui, "first", "100 %");
    column_like(ui, "ranks", "00–000");
    column_like(ui, "##marks", "≈○");
    for (const TubeColumn& c : tube) column_like(ui, c.head, "00000.0");
    for (const RankInput& input : result.ranked.front().inputs)
        if (has_column(input, result)) input_head(ui, input);
    header_row(ui, 3);
}

void draw_name(Ui& ui, const RankedMetal& r) {
    const bool clicked = ImGui::Selectable(("##row." + r.metal->slug).c_str(), ui.view().selected == r.metal->slug,
                                           ImGuiSelectableFlags_SpanAllColumns | ImGuiSelectableFlags_AllowItemOverlap);
    ui.probe.item("rank.row." + std::to_string(r.place.rank), r.metal->slug);
    if (clicked) {
        ui.view().selected = r.metal->slug;
        toggle_pin(ui.view(), r.metal->slug);
    }
    const bool hovered = ImGui::IsItemHovered();
    ImGui::SameLine(0, 0);
    const std::string name = fitted(r.metal->name, ImGui::GetContentRegionAvail().x);
    text(name);
    if (name != r.metal->name && hovered && ImGui::IsItemHovered()) hover_text(ui, r.metal->name);
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
        hover_text(ui, std::string(r.metal->name) +
                           (tied_with_best ? "\n≈ best: the data can't tell it from the first" : "") +
                           (r.from_memory ? "\n○ rests on a remembered value" : ""));
}

void cell(Ui& ui, const std::string& id, const std::string& words) {
    ImGui::TableNextColumn();
    text_right(words);
    ui.probe.item(id, words);
}

std::string figure(double x) {
    return std::isnan(x) ? "–" : pretty_number(significant(x, 3));
}

void draw_row(Ui& ui, const RankedMetal& r, const RankResult& result, const Merits& merits,
              const std::vector<TubeColumn>& tube) {
    const Place& p = r.place;
    const std::string id = "rank." + std::to_string(p.rank);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (pin_button(ui, "rank.pin." + r.metal->slug, r.metal->slug)) toggle_pin(ui.view(), r.metal->slug);
    cell(ui, id + ".rank", std::to_string(p.rank));
    ImGui::TableNextColumn();
    draw_name(ui, r);
    cell(ui, id + ".median", merits.text(p.median, p));
    cell(ui, id + ".interval", merits.interval(p));
    cell(ui, id + ".first", chance_text(p.p_first));
    cell(ui, id + ".ranks", ranks_text(p));
    draw_marks(ui, r, result);
    for (const TubeColumn& c : tube) cell(ui, id + "." + c.id, figure(c.number(*r.tube)));
    for (const RankInput& input : r.inputs) {
        const Property* property = ui.session.catalogue.property(input.property);
        if (!property || !has_column(input, result)) continue;
        ImGui::TableNextColumn();
        value_label(ui, id + "." + input.property, *r.metal, *property, input.value,
                    {.unit = false, .right = true, .opens = false});
    }
}

std::string over_range_text(const RankResult& r) {
    if (std::isnan(r.to_K)) return {};
    return " · the worst from " + trimmed(r.conditions.temperature_K, 5) + " K to " + trimmed(r.to_K, 5) + " K";
}

std::string rate_note(const Ui& ui, const RankResult& r) {
    const bool shows_money = r.fall || !r.order_by_price_form.empty();
    const std::string rate = shows_money ? shown_rate(ui.session.catalogue) : "";
    return rate.empty() ? rate : " · money at " + rate;
}

void draw_samples(Ui& ui) {
    std::size_t& samples = ui.view().rank.samples;
    const auto at = std::find(sample_counts.begin(), sample_counts.end(), samples) - sample_counts.begin();
    const int clicked = choice(ui, "samples", {"as cited", "2,000 samples", "20,000"}, static_cast<int>(at));
    if (clicked >= 0) samples = sample_counts[static_cast<std::size_t>(clicked)];
    if (ImGui::IsItemHovered())
        hover_text(ui, "Samples\nhow often the uncertain values are drawn for intervals, chances and ties; as cited: "
                       "the order of the figures alone, at once even for very many metals");
}

} // namespace

void draw_rank_table(Ui& ui, const RankResult& result, ImVec2 size) {
    const std::vector<TubeColumn> tube = columns_of_tube(ui, result);
    const int columns = 8 + static_cast<int>(tube.size()) + input_columns(result);
    constexpr ImGuiTableFlags flags = ImGuiTableFlags_ScrollY | ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit;
    const Merits merits(ui, result);
    const std::string unit = merits.unit();
    small_dim_text(ui, result.formula + (unit.empty() ? "" : " in " + unit) +
                           (result.best_high ? ", highest" : ", lowest") + " first" + over_range_text(result) +
                           rate_note(ui, result) + " · click a row to pin");
    draw_samples(ui);
    ImGui::SameLine(0, ui.px(16));
    table_row(ui, "ranking", [&](const DocumentSetting& setting) { return document_of(result, setting); });
    if (size.y > 0) size.y -= ImGui::GetTextLineHeightWithSpacing() + ImGui::GetFrameHeightWithSpacing();
    if (!ImGui::BeginTable(("ranked." + std::to_string(columns)).c_str(), columns, flags, size)) return;
    draw_head(ui, result, merits, tube);
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(result.ranked.size()));
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i)
            draw_row(ui, result.ranked[static_cast<std::size_t>(i)], result, merits, tube);
    ImGui::EndTable();
}

} // namespace pourbook

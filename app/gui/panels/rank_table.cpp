#include "answers/rank/rank_columns.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/table_order.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/say/shown_money.hpp"
#include "questions/workshop/own_metal.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::size_t first_rows = 12; // of a narrow window, before all are asked for

/// Name, how good it is, and the interval: what a phone has room for.
bool is_of_few(const RankColumn& c) {
    static constexpr std::array<std::string_view, 5> few = {"name", "relative_to_best", "relative90", "median",
                                                            "interval"};
    return std::find(few.begin(), few.end(), c.column.id) != few.end();
}

/// On a phone; in the current panel.
bool shows_few(const Ui& ui) {
    constexpr double least_whole = 560;
    return ImGui::GetContentRegionAvail().x < ui.px(least_whole);
}

std::vector<RankColumn> window_columns(const RankResult& result, const DocumentSetting& setting, const Ui& ui) {
    constexpr double all_columns = 900; // points: in less the names would be cut, and the picture shows this anyway
    const bool few = shows_few(ui), narrow = few || ImGui::GetContentRegionAvail().x < ui.px(all_columns);
    std::vector<RankColumn> out = rank_columns(result, setting);
    std::erase_if(out,
                  [&](const RankColumn& c) { return !(c.column.shown_in & in::window) || (few && !is_of_few(c)); });
    const bool figure =
        std::any_of(out.begin(), out.end(), [](const RankColumn& c) { return c.column.id == "median"; });
    if (narrow && figure) std::erase_if(out, [](const RankColumn& c) { return c.column.id == "relative_to_best"; });
    return out;
}

/// The marks stand behind it, in a column of their own.
bool has_marks(const RankColumn& c) {
    return c.column.id == "ranks";
}

std::string shown(const DataCell& cell) {
    return cell.text.empty() ? "–" : pretty_number(cell.text);
}

/// Columns as they are set up, and the room they take together.
struct Columns {
    Ui& ui;
    float needed = 0;

    void add(const std::string& head, float width) {
        ImGui::TableSetupColumn(head.c_str(), ImGuiTableColumnFlags_WidthFixed, width);
        needed += width + 2 * ImGui::GetStyle().CellPadding.x;
    }
    /// Wide enough for a text like this one and for its own head.
    void add_like(const std::string& head, const std::string& widest) {
        ImGui::PushFont(ui.fonts.small);
        const float own = ImGui::CalcTextSize(head.c_str(), nullptr, true).x;
        ImGui::PopFont();
        add(head, std::ceil(std::max(ImGui::CalcTextSize(widest.c_str()).x, own)) + ui.px(2));
    }
};

/// The widest text among rows spread over the ranking, the first forty all.
std::string widest_text(const RankColumn& column, const RankResult& result) {
    std::string widest;
    float most = 0;
    const std::size_t step = std::max<std::size_t>(1, result.ranked.size() / 40);
    for (std::size_t i = 0; i < result.ranked.size(); i += i < 40 ? 1 : step) {
        const std::string text = shown(column.cell(result.ranked[i]));
        const float width = ImGui::CalcTextSize(text.c_str()).x;
        if (width > most) most = width, widest = text;
    }
    return widest;
}

void draw_head(Ui& ui, const RankResult& result, const std::vector<RankColumn>& columns) {
    const double name_room = ui.narrow() ? 90 : 190, most_name = 270; // names are not cut for numbers
    Columns set{ui};
    float names = ui.px(name_room);
    ImGui::TableSetupScrollFreeze(0, 1);
    set.add("##pin", ui.px(20));
    for (const RankColumn& c : columns) {
        if (c.column.id == "name") {
            ImGui::TableSetupColumn("metal", ImGuiTableColumnFlags_WidthStretch);
            names =
                std::clamp(ImGui::CalcTextSize(widest_text(c, result).c_str()).x + ui.px(12), names, ui.px(most_name));
        } else if (c.property) {
            const std::string unit = c.column.unit.empty() ? "" : ", " + c.column.unit;
            set.add_like(c.property->symbol + unit, "○ 00.00");
        } else {
            set.add_like(c.column.id == "rank" ? "#" : c.column.title, widest_text(c, result));
        }
        if (has_marks(c)) set.add_like("##marks", "≈○!");
    }
    sorted_header_row(ui, "ranked", columns.front().column.id == "rank" ? 3 : 2);
    ui.table_needs = set.needed + names + ImGui::GetStyle().ScrollbarSize;
}

/// What stands in a column of the table, the pin and the marks counted; nothing in those.
SortCell sort_cell(const RankedMetal& r, const std::vector<RankColumn>& columns, int column) {
    int at = 1; // the pin
    for (const RankColumn& c : columns) {
        if (at == column) {
            if (c.column.id == "rank") return {static_cast<double>(r.place.rank), ""};
            const DataCell cell = c.cell(r);
            return {c.column.id == "name" ? no_number : cell.number, c.column.id == "name" ? r.metal->name : cell.text};
        }
        at += has_marks(c) ? 2 : 1;
    }
    return {no_number, ""};
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
    const float room = ImGui::GetContentRegionAvail().x;
    const bool small = ui.narrow() && ImGui::CalcTextSize(r.metal->name.c_str()).x > room;
    ImGui::PushFont(small ? ui.fonts.small : ui.fonts.body);
    const std::string name = fitted(r.metal->name, room);
    text(name);
    ImGui::PopFont();
    if (name != r.metal->name && hovered && ImGui::IsItemHovered()) hover_text(ui, r.metal->name);
}

/// Whose price entered: the person's own, or the list's; empty where none did.
std::string price_of_whom(const RankedMetal& r, const RankResult& result) {
    const std::optional<Evaluated> price = result.input(r, "price");
    if (!price || price->sources.empty()) return "";
    const std::string &key = price->sources.front().key, &list = result.conditions.price_form;
    return key == own_stock_key ? "paid" : key == own_prices_key ? "own list" : list;
}

/// Only where there are own prices at all: else every row would say the same.
void draw_whose_price(Ui& ui, const RankedMetal& r, const RankResult& result) {
    const WorkshopData& own = ui.session.workshop.data();
    if (own.stock.empty() && own.prices.empty()) return;
    const std::string whose = price_of_whom(r, result);
    if (whose.empty()) return;
    ImGui::SameLine(0, ui.px(6));
    if (ImGui::CalcTextSize(whose.c_str()).x > ImGui::GetContentRegionAvail().x) return;
    dim_text(ui, whose);
    ui.probe.item("rank." + std::to_string(r.place.rank) + ".whose", whose);
    if (ImGui::IsItemHovered())
        hover_text(ui, "Whose price this row rests on\n" + whose + ": " +
                           (whose == "paid"       ? "what you paid for the lots on your shelf"
                            : whose == "own list" ? "a price of your own list"
                                                  : "the reference's price; you have entered none that can be used"));
}

void draw_marks(Ui& ui, const RankedMetal& r, const RankResult& result) {
    const auto& tied = result.ranked.front().place.tied_with;
    const bool tied_with_best = std::find(tied.begin(), tied.end(), r.metal->slug) != tied.end();
    const bool stale = r.stale_price;
    ImGui::TableNextColumn();
    const std::string marks = std::string(tied_with_best ? "≈" : "") + (r.from_memory ? "○" : "") + (stale ? "!" : "");
    if (marks.empty()) return;
    dim_text(ui, marks);
    ui.probe.item("rank." + std::to_string(r.place.rank) + ".marks", marks);
    if (ImGui::IsItemHovered())
        hover_text(ui, std::string(r.metal->name) +
                           (tied_with_best ? "\n≈ best: the data can't tell it from the first" : "") +
                           (r.from_memory ? "\n○ rests on a remembered value" : "") +
                           (stale ? "\n! a stale price: past its period" : ""));
}

/// The figure behind a share of the best.
void tell_behind(Ui& ui, const std::string& id, const RankedMetal& r, const MeritCells& merit) {
    const std::string figure = merit.cell(r.place, 0).text, interval = merit.interval(r.place);
    ui.probe.say(id + ".median", figure);
    ui.probe.say(id + ".interval", interval);
    if (ImGui::IsItemHovered())
        hover_text(ui, r.metal->name + "\n" + figure + " " + pretty_unit(merit.unit()) +
                           (interval.empty() ? "" : "; 90 %: " + interval));
}

void draw_cell(Ui& ui, const std::string& id, const RankColumn& c, const RankedMetal& r, const RankResult& result) {
    ImGui::TableNextColumn();
    if (c.column.id == "name") {
        draw_name(ui, r);
        return draw_whose_price(ui, r, result);
    }
    if (c.property) {
        if (const std::optional<Evaluated> value = result.input(r, c.property->id))
            value_label(ui, id + "." + c.property->id, *r.metal, *c.property, *value,
                        {.unit = false, .right = true, .opens = false});
        return;
    }
    const std::string words = shown(c.cell(r));
    text_right(words);
    ui.probe.item(id + "." + c.column.id, words);
}

void draw_row(Ui& ui, const RankedMetal& r, const RankResult& result, const std::vector<RankColumn>& columns,
              const MeritCells* behind) {
    const std::string id = "rank." + std::to_string(r.place.rank);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (pin_button(ui, "rank.pin." + r.metal->slug, r.metal->slug)) toggle_pin(ui.view(), r.metal->slug);
    for (const RankColumn& c : columns) {
        draw_cell(ui, id, c, r, result);
        if (behind && c.column.id == "relative_to_best") tell_behind(ui, id, r, *behind);
        if (has_marks(c)) draw_marks(ui, r, result);
    }
}

std::string over_range_text(const RankResult& r) {
    if (std::isnan(r.to_K)) return {};
    return " · the worst from " + celsius_text(r.conditions.temperature_K) + " to " + celsius_text(r.to_K);
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
    const DocumentSetting setting{ui.session.catalogue, ui.session.units(), ui.session.date};
    const MeritCells merit(result.formula, result.unit, setting);
    const std::string unit = pretty_unit(merit.unit());
    const std::vector<RankColumn> shown_columns = window_columns(result, setting, ui);
    const bool against_best = std::any_of(shown_columns.begin(), shown_columns.end(),
                                          [](const RankColumn& c) { return c.column.id == "relative90"; });
    const bool marks = std::any_of(shown_columns.begin(), shown_columns.end(), has_marks);
    const int columns = (marks ? 2 : 1) + static_cast<int>(shown_columns.size()); // a pin before, the marks among them
    const ImGuiTableFlags scrolls = ui.narrow() ? 0 : ImGuiTableFlags_ScrollY;    // there the page does
    const ImGuiTableFlags flags = scrolls | ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit;
    const std::string in_what = against_best ? ", the best is 1" : unit.empty() ? "" : " in " + unit;
    const std::string what = result.formula + in_what + (result.best_high ? ", highest" : ", lowest") + " first" +
                             over_range_text(result) + rate_note(ui, result) + " · " + state_words(result.conditions) +
                             " · click a row to pin";
    ui.narrow() ? wrapped_text(what, ui.colours().dim) : small_dim_text(ui, what);
    draw_samples(ui);
    flow(ui.px(280), ui.px(16));
    table_row(ui, "ranking", [&](const DocumentSetting& leaving) { return document_of(result, leaving); });
    if (size.y > 0) size.y -= ImGui::GetTextLineHeightWithSpacing() + ImGui::GetFrameHeightWithSpacing();
    if (ui.narrow()) size = {0, 0};
    const ListRows lines;
    if (!ImGui::BeginTable(("ranked." + std::to_string(columns)).c_str(), columns, flags, size)) return;
    draw_head(ui, result, shown_columns);
    const std::string key = std::to_string(ui.session.ranking_serial());
    const std::vector<std::size_t>& rows =
        sorted_rows(ui, "ranked", key, result.ranked.size(),
                    [&](std::size_t row, int column) { return sort_cell(result.ranked[row], shown_columns, column); });
    bool& all = *ImGui::GetStateStorage()->GetBoolRef(ImGui::GetID("all rows"));
    const std::size_t first = ui.narrow() && !all ? std::min(first_rows, rows.size()) : rows.size();
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(first));
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i)
            draw_row(ui, result.ranked[rows[static_cast<std::size_t>(i)]], result, shown_columns,
                     against_best ? &merit : nullptr);
    ImGui::EndTable();
    if (first < rows.size() && ImGui::Button(("all " + std::to_string(rows.size()) + " metals").c_str())) all = true;
    if (first < rows.size()) ui.probe.item("rank.all", "");
}

} // namespace pourbook

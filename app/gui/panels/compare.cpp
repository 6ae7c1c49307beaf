// The pinned metals side by side as a table of differences: grouped by what a maker does, each figure with its interval
// and a bar against the first metal's; rows without figures are folded away.
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/metals/find_words.hpp"
#include "questions/metals/property_groups.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr int compare_most_columns = 40; // what a table of the toolkit holds safely
constexpr double wide_labels = 290, narrow_labels = 128, compare_least_column = 190;

using Metals = std::vector<const Metal*>;

const Result<Evaluated>* value_of(Ui& ui, const Metal& metal, const Property& property) {
    const Result<SheetResult>& sheet = ui.session.sheet(metal.slug);
    if (!sheet) return nullptr;
    const auto row = static_cast<std::size_t>(&property - ui.session.catalogue.properties.data());
    return row < sheet->rows.size() ? &sheet->rows[row].value : nullptr;
}

/// NaN for words and where there is no value.
double number_of(Ui& ui, const Metal& metal, const Property& property) {
    const Result<Evaluated>* value = value_of(ui, metal, property);
    return value && *value && !property.is_text ? (**value).value_si : no_number;
}

bool has_figure(Ui& ui, const Metals& metals, const Property& property) {
    return std::any_of(metals.begin(), metals.end(), [&](const Metal* m) {
        const Result<Evaluated>* value = value_of(ui, *m, property);
        return value && *value;
    });
}

/// The pinned in their order, or by the row that was clicked; without a figure last.
Metals ordered(Ui& ui) {
    const CompareChoice& made = ui.view().compare;
    Metals metals;
    for (const std::string& slug : ui.view().pins)
        if (const Metal* m = ui.session.catalogue.metal(slug); m && metals.size() < compare_most_columns)
            metals.push_back(m);
    const Property* by = ui.session.catalogue.property(made.sorted_by);
    if (!by) return metals;
    const auto before = [&](const Metal* a, const Metal* b) {
        const double x = number_of(ui, *a, *by), y = number_of(ui, *b, *by);
        if (std::isnan(x) || std::isnan(y)) return !std::isnan(x) && std::isnan(y);
        return made.falling ? x > y : x < y;
    };
    std::stable_sort(metals.begin(), metals.end(), before);
    return metals;
}

void make_first(Ui& ui, const std::string& slug) {
    auto& pins = ui.view().pins;
    const auto at = std::find(pins.begin(), pins.end(), slug);
    if (at != pins.end()) std::rotate(pins.begin(), at, at + 1);
    ui.view().compare.sorted_by.clear();
}

void draw_head_menu(Ui& ui, const Metal& metal) {
    if (!ImGui::BeginPopupContextItem(("head." + metal.slug).c_str())) return;
    if (ImGui::MenuItem("measure the others by it")) make_first(ui, metal.slug);
    ui.probe.item("compare.first." + metal.slug, "");
    if (ImGui::MenuItem("open its sheet")) show_metal(ui.session, metal.slug);
    if (ImGui::MenuItem("unpin it")) toggle_pin(ui.view(), metal.slug);
    ImGui::EndPopup();
}

void draw_head(Ui& ui, const Metals& metals) {
    ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
    ImGui::TableNextColumn();
    dim_text(ui, fitted(state_word(ui.session.conditions()), ImGui::GetContentRegionAvail().x));
    ui.probe.say("compare.state", state_word(ui.session.conditions()));
    for (const Metal* m : metals) {
        ImGui::TableNextColumn();
        pin_mark(ui, mark_of(ui.view(), m->slug), ImGui::GetTextLineHeight());
        ImGui::SameLine(0, ui.px(2));
        metal_swatch(ui, *m, ImGui::GetTextLineHeight());
        ImGui::SameLine(0, ui.px(4));
        const bool large = ImGui::CalcTextSize(m->name.c_str()).x <= ImGui::GetContentRegionAvail().x;
        ImGui::PushFont(large ? ui.fonts.body : ui.fonts.small);
        const std::string name = fitted(m->name, ImGui::GetContentRegionAvail().x);
        if (ImGui::Selectable((name + "##head").c_str(), false, 0, {ImGui::CalcTextSize(name.c_str()).x, 0}))
            show_metal(ui.session, m->slug);
        ImGui::PopFont();
        ui.probe.item("compare.head." + m->slug, m->name);
        if (ImGui::IsItemHovered()) hover_text(ui, m->name + "\nopen its sheet; the right button offers more");
        draw_head_menu(ui, *m);
    }
}

/// A click on a row's name puts the metals in its order: highest first, lowest first, as pinned.
void draw_label(Ui& ui, const Property& property) {
    CompareChoice& made = ui.view().compare;
    const bool sorted = made.sorted_by == property.id;
    const std::string label = shown_label(property, ui.session.units());
    const std::string sign = !sorted ? "" : made.falling ? "  highest first" : "  lowest first";
    const float at = ImGui::GetCursorPosX();
    if (ImGui::Selectable(("##by." + property.id).c_str(), false, ImGuiSelectableFlags_AllowItemOverlap)) {
        if (!sorted)
            made.sorted_by = property.id, made.falling = true;
        else if (made.falling)
            made.falling = false;
        else
            made.sorted_by.clear();
    }
    ui.probe.item("compare.by." + property.id, sign);
    if (ImGui::IsItemHovered())
        hover_text(ui, property.label + "\n" + property.meaning + "\nclick: the metals in this order");
    ImGui::SameLine(0, 0);
    ImGui::SetCursorPosX(at);
    text(fitted(label, ImGui::GetContentRegionAvail().x));
    if (sorted) ImGui::SameLine(), small_dim_text(ui, sign);
}

/// Behind the figure: as long as it is of the row's largest.
void draw_bar(Ui& ui, const Metal& metal, double value, double largest) {
    if (!(largest > 0) || !(value >= 0)) return;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x * static_cast<float>(value / largest);
    constexpr double thick = 2; // of the edge that is seen; behind the figure it stays pale
    const Colour colour = ui.colours().of_slot(mark_of(ui.view(), metal.slug));
    const float foot = low.y + ImGui::GetTextLineHeight() + ui.px(1);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, {low.x + width, foot}, u32(colour.with_alpha(26)));
    list.AddRectFilled({low.x, foot - ui.px(thick)}, {low.x + width, foot}, u32(colour));
}

/// Against the first: a ratio; of temperatures a difference, as their zero is a matter of the scale.
std::string against_text(const Ui& ui, const Property& property, double value, double base) {
    if (!std::isfinite(value) || !std::isfinite(base)) return {};
    if (property.si_unit == "K") {
        const bool workshop = ui.session.units() == UnitSystem::workshop;
        const double steps = std::round((value - base) * (workshop ? 1.8 : 1));
        return (steps < 0 ? "−" : "+") + trimmed(std::abs(steps), 5) + (workshop ? " °F" : " K");
    }
    return base != 0 ? "×" + significant(value / base, 3) : "";
}

void draw_row(Ui& ui, const Metals& metals, const Property& property) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    draw_label(ui, property);
    double largest = 0;
    for (const Metal* m : metals) largest = std::fmax(largest, std::abs(number_of(ui, *m, property)));
    const double base = number_of(ui, *metals.front(), property);
    for (const Metal* m : metals) {
        ImGui::TableNextColumn();
        const Result<Evaluated>* value = value_of(ui, *m, property);
        if (!value) continue;
        const double number = number_of(ui, *m, property);
        draw_bar(ui, *m, number, largest);
        const float right = ImGui::GetCursorPosX() + ImGui::GetContentRegionAvail().x;
        const std::string against = m == metals.front() ? "" : against_text(ui, property, number, base);
        value_label(ui, "compare." + m->slug + "." + property.id, *m, property, *value,
                    {.unit = false, .plus_minus = true});
        if (against.empty()) continue;
        ui.probe.say("compare." + m->slug + "." + property.id + ".ratio", against);
        ImGui::SameLine(0, 0);
        const float from = right - ImGui::CalcTextSize(against.c_str()).x;
        if (from < ImGui::GetCursorPosX() + ui.px(6)) { // no room beside the figure
            ImGui::NewLine();
            continue;
        }
        ImGui::SetCursorPosX(from);
        dim_text(ui, against);
    }
}

bool is_folded(Ui& ui, const std::string& group) {
    const auto& folded = ui.view().compare.folded;
    return std::find(folded.begin(), folded.end(), group) != folded.end();
}

void draw_group_head(Ui& ui, const PropertyGroup& group) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool closed = is_folded(ui, group.name);
    const TextLook look(ui.fonts.strong, ui.colours().ink);
    const std::string head = fitted((closed ? "+ " : "− ") + group.name, ImGui::GetContentRegionAvail().x);
    if (ImGui::Selectable((head + "##" + group.name).c_str(), false, ImGuiSelectableFlags_SpanAllColumns)) {
        auto& folded = ui.view().compare.folded;
        closed ? std::erase(folded, group.name) : (folded.push_back(group.name), std::size_t{1});
    }
    ui.probe.item("compare.group." + group.name, closed ? "closed" : "open");
}

/// Those without a figure of any metal, in one line.
void draw_missing(Ui& ui, const PropertyGroup& group, const std::vector<std::string>& missing) {
    if (missing.empty()) return;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const std::string words = std::to_string(missing.size()) + " without figures";
    dim_text(ui, fitted(words, ImGui::GetContentRegionAvail().x));
    ui.probe.item("compare.missing." + group.name, words);
    if (ImGui::IsItemHovered()) hover_text(ui, "No figure of these metals is kept for\n" + joined(missing));
}

void draw_group(Ui& ui, const Metals& metals, const PropertyGroup& group) {
    const std::string& find = ui.view().compare.find;
    std::vector<const Property*> shown;
    std::vector<std::string> missing;
    for (const Property* p : group.properties) {
        if (!holds_every_word(p->label + " " + p->id + " " + group.name, find)) continue;
        has_figure(ui, metals, *p) ? shown.push_back(p) : missing.push_back(p->label);
    }
    if (shown.empty() && missing.empty()) return;
    draw_group_head(ui, group);
    if (is_folded(ui, group.name)) return;
    for (const Property* p : shown) draw_row(ui, metals, *p);
    draw_missing(ui, group, missing);
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
    const Metals metals = ordered(ui);
    if (metals.empty()) {
        dim_text(ui, "Pin two or more metals: their properties appear here side by side.");
        return;
    }
    if (metals.size() > 1) draw_versus(ui);
    ImGui::SetNextItemWidth(ui.px(190));
    ImGui::InputTextWithHint("##compare.find", "rows: melting, price ...", &ui.view().compare.find);
    ui.probe.item("compare.find", ui.view().compare.find);
    flow(ui.px(280), ui.px(12));
    draw_comparison_row(ui, "comparison", metals);
    {
        const TextLook look(ui.fonts.small, ui.colours().dim);
        wrapped_text("at " + celsius_text(ui.session.conditions().temperature_K) +
                         " · ± and bars: 90 %, of the row's largest · × or + against " + metals.front()->name +
                         " · ○ remembered · click a figure for its evidence, a row's name to put the metals in order",
                     ui.colours().dim);
    }
    constexpr ImGuiTableFlags flags =
        ImGuiTableFlags_ScrollX | ImGuiTableFlags_ScrollY | ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingFixedFit;
    constexpr double narrow_table = 520; // points of height, in which it scrolls by itself
    if (!ImGui::BeginTable("compared", static_cast<int>(metals.size()) + 1, flags, rest_of_panel(ui, narrow_table)))
        return;
    const float labels = ui.px(ui.narrow() ? narrow_labels : wide_labels);
    ImGui::TableSetupScrollFreeze(1, 1);
    const float room = ImGui::GetContentRegionAvail().x - labels - ui.px(40);
    const float share = std::clamp(room / static_cast<float>(metals.size()), ui.px(compare_least_column), ui.px(330));
    ImGui::TableSetupColumn("property", ImGuiTableColumnFlags_WidthFixed, labels);
    for (const Metal* m : metals)
        ImGui::TableSetupColumn(m->slug.c_str(), ImGuiTableColumnFlags_WidthFixed,
                                share - 2 * ImGui::GetStyle().CellPadding.x);
    draw_head(ui, metals);
    for (const PropertyGroup& group : property_groups(ui.session.catalogue)) draw_group(ui, metals, group);
    ImGui::EndTable();
}

} // namespace pourbook

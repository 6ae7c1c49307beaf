#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/take_keyboard.hpp"

#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/metals/find_metal.hpp"

#include <imgui_stdlib.h>

#include <algorithm>

namespace pourbook {
namespace {

constexpr double widest_list = 470, metal_figure_width = 110, metal_lines = 12;

float metal_list_width(const Ui& ui) {
    constexpr double around = 48; // the edges of the list, its bar
    return std::min(ui.px(widest_list), ImGui::GetIO().DisplaySize.x - ui.px(around));
}

/// Up and down move in the list below the words, which keep the focus.
int move_in_list(ImGuiInputTextCallbackData* data) {
    *static_cast<int*>(data->UserData) += data->EventKey == ImGuiKey_DownArrow ? 1 : -1;
    return 0;
}

std::string conductivity_of(Ui& ui, const Metal& metal) {
    const Property* property = ui.session.catalogue.property("conductivity");
    const Result<Evaluated>& conductivity = ui.session.figures(metal).conductivity;
    if (!property || !conductivity) return "";
    const std::string unit = shown_unit(*property, ui.session.units());
    return pretty_number(shown_value(*property, *conductivity, ui.session.units())) + " " + unit;
}

/// What a list says behind the name.
void draw_facts(Ui& ui, const Metal& metal, float left, float width) {
    if (!ui.narrow()) {
        ImGui::SameLine(left + width * 0.52F);
        const bool shelf = on_shelf(ui, metal.slug);
        dim_text(ui,
                 fitted(metal.family + (shelf ? " · on the shelf" : ""), width * 0.48F - ui.px(metal_figure_width)));
    }
    const std::string figure = conductivity_of(ui, metal);
    ImGui::SameLine(left + width - ImGui::CalcTextSize(figure.c_str()).x - ui.px(8));
    dim_text(ui, figure);
}

bool draw_line(Ui& ui, const std::string& id, const Metal& metal, bool current) {
    const float left = ImGui::GetCursorPosX(), width = metal_list_width(ui);
    const bool clicked =
        ImGui::Selectable(("##" + metal.slug).c_str(), current, ImGuiSelectableFlags_AllowItemOverlap, {width, 0});
    ui.probe.item(id + "." + metal.slug, metal.slug);
    const bool in_sight = ImGui::IsItemVisible();
    if (current && !in_sight) ImGui::SetScrollHereY(0.5F);
    if (!in_sight) return clicked;
    ImGui::SameLine(left);
    if (ui.view().marks.of.contains(metal.slug) && is_pinned(ui.view(), metal.slug))
        pin_mark(ui, mark_of(ui.view(), metal.slug), ImGui::GetTextLineHeight());
    else
        ImGui::Dummy({ui.px(14), ImGui::GetTextLineHeight()});
    ImGui::SameLine(0, ui.px(3));
    metal_swatch(ui, metal, ImGui::GetTextLineHeight());
    ImGui::SameLine(0, ui.px(5));
    const float room = ui.narrow() ? width - ui.px(metal_figure_width) : width * 0.52F;
    text(fitted(metal.name, room - ui.px(27 + swatch_width)));
    draw_facts(ui, metal, left, width);
    return clicked;
}

/// Pinned first while nothing is typed, then those on the shelf, then all.
std::vector<const Metal*> offered(Ui& ui, const std::string& words) {
    std::vector<const Metal*> found = search_metals(ui.session.catalogue, words);
    if (!words.empty()) return found;
    const auto rank = [&](const Metal* m) { return is_pinned(ui.view(), m->slug) ? 0 : on_shelf(ui, m->slug) ? 1 : 2; };
    std::stable_sort(found.begin(), found.end(), [&](const Metal* a, const Metal* b) { return rank(a) < rank(b); });
    return found;
}

std::string draw_list(Ui& ui, const std::string& id) {
    Draft& draft = ui.drafts[id + ".find"];
    if (ImGui::IsWindowAppearing()) {
        draft = {};
        take_keyboard();
    }
    ImGui::SetNextItemWidth(metal_list_width(ui));
    const std::string before = draft.typed;
    const bool entered = ImGui::InputTextWithHint(
        ("##" + id + ".find").c_str(), "part of a name, an alias, a designation", &draft.typed,
        ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_CallbackHistory, move_in_list, &draft.place);
    ui.probe.item(id + ".find", draft.typed);
    const std::vector<const Metal*> found = offered(ui, draft.typed);
    if (before != draft.typed) draft.place = 0;
    draft.place = std::clamp(draft.place, 0, std::max(0, static_cast<int>(found.size()) - 1));
    if (found.empty()) dim_text(ui, "no metal is called that: a mix can be made in Mix and pinned");
    std::string chosen;
    const float line = ImGui::GetTextLineHeightWithSpacing();
    ImGui::BeginChild("list",
                      {metal_list_width(ui) + ui.px(16),
                       line * static_cast<float>(std::min<double>(metal_lines, static_cast<double>(found.size())))});
    for (std::size_t i = 0; i < found.size(); ++i) {
        const bool current = static_cast<int>(i) == draft.place;
        if (draw_line(ui, id, *found[i], current) || (entered && current)) chosen = found[i]->slug;
    }
    ImGui::EndChild();
    if (!found.empty()) small_dim_text(ui, "conductivity: " + std::string(state_word(ui.session.conditions())));
    return chosen;
}

} // namespace

std::string metal_name(const Catalogue& catalogue, const std::string& words) {
    const Metal* metal = catalogue.metal(words);
    return metal ? metal->name : words;
}

bool on_shelf(Ui& ui, const std::string& slug) {
    const auto& stock = ui.session.workshop.data().stock;
    return std::any_of(stock.begin(), stock.end(), [&](const auto& lot) { return lot.metal == slug; });
}

std::string metal_field(Ui& ui, const std::string& id, const std::string& slug, float width) {
    const Metal* metal = ui.session.catalogue.metal(slug);
    std::string chosen;
    const std::string shown = metal ? metal->name : !slug.empty() ? slug : width < ui.px(60) ? "" : "choose a metal";
    if (begin_combo(id, shown, width)) {
        chosen = draw_list(ui, id);
        if (!chosen.empty()) ImGui::CloseCurrentPopup();
        end_combo();
    }
    ui.probe.item(id, slug);
    return chosen;
}

} // namespace pourbook

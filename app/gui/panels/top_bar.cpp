#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/typed_faults.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr double field_width = 96, condition_width = 138;

void draw_views(Ui& ui) {
    for (const char* name : {"metals", "rank", "curves", "compare", "drop", "mix", "pour", "trials", "sources"}) {
        const Action& a = *action(std::string("view.") + name);
        if (word_button(ui, a.id, a.label, ui.view().view == name)) a.run(ui.session);
        if (ImGui::IsItemHovered()) hover_text(ui, std::string(a.label) + "  " + a.shortcut.text() + "\n" + a.help);
        ImGui::SameLine();
    }
}

void draw_condition(Ui& ui) {
    static constexpr std::array conditions = {"reference",        "as-cast", "annealed",   "cold-worked",
                                              "solution-treated", "aged",    "as-supplied"};
    ImGui::SetNextItemWidth(ui.px(condition_width));
    if (ImGui::BeginCombo("##condition", ui.view().condition.c_str())) {
        for (const char* c : conditions) {
            if (ImGui::Selectable(c, ui.view().condition == c)) ui.view().condition = c;
            ui.probe.item(std::string("condition.") + c, c);
        }
        ImGui::EndCombo();
    }
    ui.probe.item("condition", ui.view().condition);
    if (ImGui::IsItemHovered())
        hover_text(ui, "Condition\nreference: each metal's usual comparison state. Where only another condition is "
                       "cited, that one is used with a "
                       "wider uncertainty, and the value says so.");
}

float width_of(const Ui& ui, const char* words) {
    return ImGui::CalcTextSize(words).x + 2 * ui.px(8);
}

void draw_help_button(Ui& ui) {
    const Action& help = *action("help");
    if (word_button(ui, help.id, help.label, ui.view().help)) help.run(ui.session);
    if (ImGui::IsItemHovered())
        hover_text(ui, std::string(help.label) + "  " + help.shortcut.text() + "\n" + help.help);
}

void draw_settings(Ui& ui) {
    const char* theme = ui.view().dark ? "Light" : "Dark";
    const float gap = ImGui::GetStyle().ItemSpacing.x;
    const float width = ImGui::CalcTextSize("at").x + ImGui::CalcTextSize("in").x +
                        ui.px(field_width + condition_width) + width_of(ui, "SI") + width_of(ui, "Workshop") +
                        width_of(ui, theme) + width_of(ui, "Help") + 6 * gap + ui.px(2);
    ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - width);
    ImGui::AlignTextToFramePadding();
    dim_text(ui, "at");
    ImGui::SameLine();
    text_field(ui, "temperature", ui.view().temperature, "20 degC", ui.px(field_width), temperature_fault);
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
        hover_text(ui, "Temperature\n20 degC, 77 K, 68 degF; or a range 77 K:300 K: in Rank and in one metal against "
                       "another the worst over it counts");
    ImGui::SameLine();
    dim_text(ui, "in");
    ImGui::SameLine();
    draw_condition(ui);
    ImGui::SameLine();
    const int clicked = choice(ui, "units", {"SI", "Workshop"}, ui.view().workshop_units ? 1 : 0);
    if (clicked >= 0) ui.view().workshop_units = clicked == 1;
    ImGui::SameLine();
    if (ImGui::Button(theme)) ui.view().dark = !ui.view().dark;
    ui.probe.item("theme", theme);
    ImGui::SameLine();
    draw_help_button(ui);
}

/// In views that can't answer over a range.
std::string range_note(const Ui& ui) {
    const TemperatureRange range = ui.session.temperatures();
    const std::string& view = ui.session.view.view;
    const bool needs_one = view == "metals" || view == "compare" || view == "drop";
    if (std::isnan(range.to_K) || !needs_one) return {};
    return std::string(view == "compare" ? "the table" : "here") + ": at " + temperature_text(range.from_K) +
           ", where the range begins";
}

/// Below the settings.
template <class Draw> void at_the_right(const std::string& words, Draw draw) {
    const float width = ImGui::CalcTextSize(words.c_str()).x;
    ImGui::SetCursorPosX(std::max(ImGui::GetCursorPosX(), ImGui::GetWindowContentRegionMax().x - width));
    draw(words);
}

} // namespace

void draw_top_bar(Ui& ui) {
    draw_views(ui);
    draw_settings(ui);
    const std::string& fault = field_fault(ui, "temperature");
    if (!fault.empty()) {
        at_the_right("temperature: " + fault, [&](const std::string& words) { warning_text(ui, words); });
        ui.probe.item("temperature.fault", fault);
    } else if (const std::string note = range_note(ui); !note.empty()) {
        at_the_right(note, [&](const std::string& words) { dim_text(ui, words); });
        ui.probe.item("temperature.note", note);
    }
}

} // namespace pourbook

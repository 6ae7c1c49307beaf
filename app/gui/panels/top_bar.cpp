#include "core/materials/names.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/typed_faults.hpp"
#include "gui/widgets/quantity_field.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/views.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr double field_width = 96, condition_width = 138;

void draw_views(Ui& ui) {
    for (const ViewName& view : view_names) {
        if (std::string(view.name) == "start") continue; // the program's own name opens it
        const Action& a = *action(std::string("view.") + view.name);
        if (word_button(ui, a.id, a.label, ui.view().view == view.name)) a.run(ui.session);
        if (ImGui::IsItemHovered()) hover_text(ui, std::string(a.label) + "  " + a.shortcut.text() + "\n" + a.help);
        ImGui::SameLine();
    }
}

/// All views in one list.
void draw_view_list(Ui& ui, float width) {
    const Action& now = *action("view." + ui.view().view);
    if (begin_combo("views", now.label, width)) {
        for (const ViewName& view : view_names) {
            const Action& a = *action(std::string("view.") + view.name);
            if (ImGui::Selectable(a.label, &a == &now)) a.run(ui.session);
            ui.probe.item(a.id, a.label);
        }
        end_combo();
    }
    ui.probe.item("views", now.label);
}

constexpr const char* conditions_help = "Condition, form of prices, purity\nreference: each metal's usual comparison "
                                        "state. Where only another condition is "
                                        "cited, that one is used with a wider uncertainty, and the value says so.\n"
                                        "Part: as you cast it (what is left in the metal, pores, how it cooled) or the "
                                        "handbook's sound and pure metal. By itself Rank and Drop answer for the "
                                        "casting, Metals and Compare for the handbook.";

constexpr const char* by_the_view = "as the view asks";

/// Sets a field; what goes against it is taken away: what is said of a casting, and the handbook's metal.
void state_condition(Stated& conditions, const std::string& field, const std::string& text) {
    static constexpr std::array of_casting = {"feedstock", "porosity", "treatment"};
    const bool casting = std::find(of_casting.begin(), of_casting.end(), field) != of_casting.end();
    if (field == "as" && text == "handbook")
        for (const char* name : of_casting) conditions.set(name, "");
    if (casting && !text.empty() && conditions.text("as") == "handbook") conditions.set("as", "");
    conditions.set(field, text);
}

/// A field of the conditions that is typed, below its name.
void draw_typed(Ui& ui, const char* name, const char* words) {
    Stated& conditions = ui.view().conditions;
    const QuestionField& field = conditions.question().fields[conditions.question().at(name)];
    std::string text = conditions.text(name);
    dim_text(ui, words);
    ImGui::SameLine(ui.px(90));
    if (text_field(ui, std::string("conditions.") + name, text, field.example.c_str(), ui.px(96),
                   [&](const std::string& typed) {
                       const Fault fault = field.fault(typed, ui.session.catalogue);
                       return fault ? fault->text : std::string();
                   }))
        state_condition(conditions, name, text);
    fault_line(ui, std::string("conditions.") + name);
}

void draw_names(Ui& ui, const char* name, const std::string& prefix, const std::vector<std::string>& words,
                const std::string& usual) {
    Stated& conditions = ui.view().conditions;
    const std::string chosen = conditions.states(name) ? conditions.text(name) : usual;
    for (const std::string& word : words) {
        if (ImGui::Selectable(word.c_str(), chosen == word))
            state_condition(conditions, name, word == usual ? "" : word);
        ui.probe.item(prefix + word, word);
    }
}

/// What holds beside the temperature, in few words.
std::string shown_conditions(const Conditions& c) {
    std::string words = !c.temper.empty()                         ? c.temper
                        : c.condition == reference_condition_name ? "usual state"
                                                                  : c.condition;
    if (c.price_form != price_form_names.front()) words += ", " + c.price_form;
    if (c.casting) words += ", casting";
    if (c.rrr) words += ", RRR " + trimmed(*c.rrr, 4);
    return words;
}

void draw_conditions(Ui& ui, float width) {
    const Conditions& now = ui.session.conditions();
    if (begin_combo("condition", shown_conditions(now), width)) {
        std::vector<std::string> conditions = condition_names;
        conditions.insert(conditions.begin(), reference_condition_name);
        draw_names(ui, "condition", "condition.", conditions, reference_condition_name);
        draw_typed(ui, "condition", "or a temper");
        ImGui::Separator();
        dim_text(ui, "the part");
        draw_names(ui, "as", "conditions.as.", {by_the_view, "casting", "handbook"}, by_the_view);
        draw_typed(ui, "feedstock", "melted from");
        draw_typed(ui, "porosity", "porosity");
        draw_names(ui, "treatment", "conditions.treatment.", treatment_names, treatment_names.front());
        ImGui::Separator();
        dim_text(ui, "prices");
        draw_names(ui, "price-form", "conditions.price-form.", price_form_names, price_form_names.front());
        ImGui::Separator();
        draw_typed(ui, "purity-rrr", "RRR");
        end_combo();
    }
    ui.probe.item("condition", now.temper.empty() ? now.condition : now.temper);
    if (ImGui::IsItemHovered()) hover_text(ui, conditions_help);
}

void draw_temperature(Ui& ui) {
    ImGui::AlignTextToFramePadding();
    dim_text(ui, "at");
    ImGui::SameLine();
    std::string at = ui.view().conditions.text("at");
    if (quantity_field(ui, "temperature", at, {"degC", "20", ui.px(field_width)}, temperature_fault))
        ui.view().conditions.set("at", at);
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
        hover_text(ui, "Temperature\n20 degC, 77 K, 68 degF; or a range 77 K:300 K: in Rank and in one metal against "
                       "another the worst over it counts");
    ImGui::SameLine();
    dim_text(ui, "in");
    ImGui::SameLine();
}

void draw_units_and_theme(Ui& ui) {
    const int clicked = choice(ui, "units", {"SI", "Workshop"}, ui.view().workshop_units ? 1 : 0);
    if (clicked >= 0) ui.view().workshop_units = clicked == 1;
    ImGui::SameLine();
    const char* theme = ui.view().dark ? "Light" : "Dark";
    if (ImGui::Button(theme)) ui.view().dark = !ui.view().dark;
    ui.probe.item("theme", theme);
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
                        ui.px(field_width + condition_width) + button_width("SI") + button_width("Workshop") +
                        button_width(theme) + button_width("Help") + 6 * gap + ui.px(2);
    ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - width);
    draw_temperature(ui);
    draw_conditions(ui, ui.px(condition_width));
    ImGui::SameLine();
    draw_units_and_theme(ui);
    ImGui::SameLine();
    draw_help_button(ui);
}

/// What all views are asked for, as a button that folds the fields away.
void draw_folded_settings(Ui& ui, float width) {
    const RangedConditions& asked = ui.session.asked_conditions();
    const std::string to = asked.to_K ? " to " + celsius_text(*asked.to_K) : "";
    const std::string words = celsius_text(asked.from.temperature_K) + to + ", " + shown_conditions(asked.from);
    const float room = width - 2 * ImGui::GetStyle().FramePadding.x;
    if (ImGui::Button((fitted(words, room) + "##settings").c_str(), {width, 0})) ui.settings_open = !ui.settings_open;
    ui.probe.item("settings", words);
    if (ImGui::IsItemHovered()) hover_text(ui, words + "\ntemperature, condition, units, dark or light");
}

/// The view, what holds for all of them, the help; below them the fields, where they are folded out.
void draw_narrow_bar(Ui& ui) {
    constexpr double list_width = 150;
    draw_view_list(ui, ui.px(list_width));
    ImGui::SameLine();
    const float help = button_width("Help") + ImGui::GetStyle().ItemSpacing.x;
    draw_folded_settings(ui, ImGui::GetContentRegionAvail().x - help);
    ImGui::SameLine();
    draw_help_button(ui);
    if (!ui.settings_open && field_fault(ui, "temperature").empty()) return;
    draw_temperature(ui);
    draw_conditions(ui, ImGui::GetContentRegionAvail().x);
    draw_units_and_theme(ui);
}

/// In views that can't answer over a range.
std::string range_note(const Ui& ui) {
    const RangedConditions& range = ui.session.asked_conditions();
    const std::string& view = ui.session.view.view;
    const bool needs_one = view == "metals" || view == "compare" || view == "drop";
    if (!range.to_K || !needs_one) return {};
    return std::string(view == "compare" ? "the table" : "here") + ": at " + celsius_text(range.from.temperature_K) +
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
    if (ui.narrow()) {
        draw_narrow_bar(ui);
    } else {
        draw_views(ui);
        draw_settings(ui);
    }
    const std::string& fault = field_fault(ui, "temperature");
    if (!fault.empty()) {
        at_the_right("temperature: " + fault, [&](const std::string& words) { warning_text(ui, words); });
        ui.probe.item("temperature.fault", fault);
    } else if (const std::string note = range_note(ui); !note.empty()) {
        at_the_right(note, [&](const std::string& words) { wrapped_text(words, ui.colours().dim); });
        ui.probe.item("temperature.note", note);
    }
}

} // namespace pourbook

#include "gui/panels/panels.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr const char* own_formula = "a formula of my own";

void draw_goals(Ui& ui) {
    RankChoice& choice_made = ui.view().rank;
    const Goal* goal = ui.session.catalogue.goal(choice_made.goal);
    ImGui::SetNextItemWidth(ui.px(250));
    if (ImGui::BeginCombo("##goal", goal ? goal->label.c_str() : own_formula, ImGuiComboFlags_HeightLarge)) {
        for (const Goal& g : ui.session.catalogue.goals) {
            if (ImGui::Selectable(g.label.c_str(), g.id == choice_made.goal)) choice_made.goal = g.id;
            ui.probe.item("goal." + g.id, g.label);
            if (ImGui::IsItemHovered()) hover_text(ui, g.label + "\n" + g.sentence + "\n" + g.formula);
        }
        if (ImGui::Selectable(own_formula, choice_made.goal.empty())) choice_made.goal.clear();
        ui.probe.item("goal.own", own_formula);
        ImGui::EndCombo();
    }
    ui.probe.item("goal", choice_made.goal);
}

void draw_formula(Ui& ui) {
    RankChoice& made = ui.view().rank;
    ImGui::AlignTextToFramePadding();
    dim_text(ui, "formula");
    ImGui::SameLine();
    text_field(ui, "formula", made.formula, "conductivity / (density * price)",
               ImGui::GetContentRegionAvail().x - ui.px(150),
               [&](const std::string& t) { return formula_fault(ui.session.catalogue, t); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) {
        std::string names = "Formula\n+ - * / ^ ( ) abs min max sqrt log exp over the properties:";
        for (const Property& p : ui.session.catalogue.properties)
            if (!p.is_text) names += " " + p.id;
        hover_text(ui, names);
    }
    ImGui::SameLine();
    const int clicked = choice(ui, "best", {"highest", "lowest"}, made.best_high ? 0 : 1);
    if (clicked >= 0) made.best_high = clicked == 0;
    fault_line(ui, "formula");
}

void draw_holding(Ui& ui) {
    static constexpr std::array<Holding, 3> all = {Holding::size, Holding::mass, Holding::budget};
    std::string& holding = ui.view().rank.holding;
    const auto at = std::find_if(all.begin(), all.end(), [&](Holding h) { return holding == name_of(h); });
    const int clicked =
        choice(ui, "holding", {"same size", "same mass", "same cost"}, static_cast<int>(at - all.begin()));
    if (clicked >= 0) holding = name_of(all[static_cast<std::size_t>(clicked)]);
    if (ImGui::IsItemHovered())
        hover_text(ui, "What is held equal\nparts of the same size, the same mass, or the same cost of metal");
}

void draw_limits(Ui& ui) {
    RankChoice& made = ui.view().rank;
    ImGui::AlignTextToFramePadding();
    dim_text(ui, "only where");
    ImGui::SameLine();
    text_field(ui, "where", made.where, "liquidus < 1100 degC; family != lead",
               ImGui::GetContentRegionAvail().x - ui.px(740),
               [&](const std::string& t) { return conditions_fault(ui.session.catalogue, t); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
        hover_text(ui, "Conditions\none or more, separated by ';': liquidus < 1100 degC; family != lead");
    ImGui::SameLine();
    draw_holding(ui);
    ImGui::SameLine();
    const int clicked = choice(ui, "candidates", {"all metals", "pinned", "my shelf"},
                               made.on_shelf      ? 2
                               : made.only_pinned ? 1
                                                  : 0);
    if (clicked >= 0) {
        made.only_pinned = clicked == 1;
        made.on_shelf = clicked == 2;
    }
    ImGui::SameLine();
    ImGui::Checkbox("unusual ones too", &made.include_unusual);
    ui.probe.item("unusual", made.include_unusual ? "on" : "off");
    if (ImGui::IsItemHovered())
        hover_text(ui, "Unusual metals\nalso rank those the goal leaves out: unfit for home casting, or outside the "
                       "goal's own conditions");
    fault_line(ui, "where");
}

} // namespace

void draw_rank_choice(Ui& ui) {
    draw_goals(ui);
    const Goal* goal = ui.session.catalogue.goal(ui.view().rank.goal);
    ImGui::SameLine();
    if (goal) {
        ImGui::AlignTextToFramePadding();
        wrapped_text(goal->sentence, ui.colours().ink);
        if (ImGui::IsItemHovered())
            hover_text(ui, goal->sentence + "\n" + goal->formula +
                               (goal->best_high ? ", highest is best" : ", lowest is best"));
    } else {
        draw_formula(ui);
    }
    if (needs_setup(ui.session.catalogue, ui.session.goal_words())) draw_rank_fall(ui);
    draw_limits(ui);
    ImGui::Spacing();
}

} // namespace pourbook

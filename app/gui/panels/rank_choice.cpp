#include "gui/panels/goal_fields.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/typed_faults.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

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
    constexpr double behind = 740; // what stands in the same line
    text_field(ui, "where", made.where, "liquidus < 1100 degC; family != lead",
               ImGui::GetContentRegionAvail().x - (ui.narrow() ? 0 : ui.px(behind)),
               [&](const std::string& t) { return conditions_fault(ui.session.catalogue, t); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
        hover_text(ui, "Conditions\none or more, separated by ';': liquidus < 1100 degC; family != lead");
    flow(button_width("same size"));
    draw_holding(ui);
    flow(button_width("all metals"));
    const int clicked = choice(ui, "candidates", {"all metals", "pinned", "my shelf"},
                               made.on_shelf      ? 2
                               : made.only_pinned ? 1
                                                  : 0);
    if (clicked >= 0) {
        made.only_pinned = clicked == 1;
        made.on_shelf = clicked == 2;
    }
    flow(button_width("unusual ones too") + ImGui::GetFrameHeight());
    ImGui::Checkbox("unusual ones too", &made.include_unusual);
    ui.probe.item("unusual", made.include_unusual ? "on" : "off");
    if (ImGui::IsItemHovered())
        hover_text(ui, "Unusual metals\nalso rank those the goal leaves out: unfit for home casting, or outside the "
                       "goal's own conditions");
    fault_line(ui, "where");
}

/// As a goal of one's own, under a name as people write it.
void keep_formula(Ui& ui) {
    const RankChoice& made = ui.view().rank;
    const Kind& kind = known_kind("goal");
    std::string& name = ui.session.passing.formula_name;
    Entry goal = new_entry(kind);
    text_of(kind, goal, "name") = file_name_of(name);
    text_of(kind, goal, "formula") = made.formula;
    text_of(kind, goal, "best") = made.best_high ? "high" : "low";
    text_of(kind, goal, "where") = made.where;
    text_of(kind, goal, "sentence") = name;
    const Result<Entry> kept = ui.session.workshop.keep(ui.session.catalogue, kind, goal, goal);
    ui.drafts["formula.name"].fault = kept ? "" : kept.problem().text;
    if (!kept) return;
    ui.session.note_kept("kept: " + title_of(kind, *kept));
    name.clear();
}

void draw_keep_formula(Ui& ui) {
    if (!ui.session.workshop.available()) return;
    std::string& name = ui.session.passing.formula_name;
    dim_text(ui, "keep it as");
    ImGui::SameLine();
    ImGui::SetNextItemWidth(std::min(ui.px(210), ImGui::GetContentRegionAvail().x));
    ImGui::InputTextWithHint("##formula.name", "a name, such as heat per euro", &name);
    ui.probe.item("formula.name", name);
    flow(button_width("keep this formula"));
    if (ImGui::Button("keep this formula") && !name.empty()) keep_formula(ui);
    ui.probe.item("formula.keep", "");
    if (ImGui::IsItemHovered())
        hover_text(ui, "Keep this formula\nfor every later ranking, in the list of goals and on the command line");
    fault_line(ui, "formula.name");
}

} // namespace

void draw_rank_choice(Ui& ui) {
    RankChoice& made = ui.view().rank;
    constexpr double goal_width = 250;
    draw_goals(ui, "goal", made.goal, ui.narrow() ? ImGui::GetContentRegionAvail().x : ui.px(goal_width));
    const Goal* goal = ui.session.catalogue.goal(made.goal);
    if (!ui.narrow()) ImGui::SameLine();
    if (goal) {
        ImGui::AlignTextToFramePadding();
        wrapped_text(goal->sentence, ui.colours().ink);
        if (ImGui::IsItemHovered())
            hover_text(ui, goal->sentence + "\n" + goal->formula +
                               (goal->best_high ? ", highest is best" : ", lowest is best"));
    } else {
        ImGui::AlignTextToFramePadding();
        dim_text(ui, "formula");
        ImGui::SameLine();
        draw_formula(ui, "formula", "best", made.formula, made.best_high);
        draw_keep_formula(ui);
    }
    const bool fall = needs_setup(ui.session.catalogue, ui.session.goal_words());
    const bool open = !ui.narrow() || folding_head(ui, fall ? "Magnet, tube and limits" : "Limits");
    if (ui.narrow()) ui.probe.item("rank.limits", open ? "open" : "");
    if (open && fall) draw_rank_fall(ui);
    if (open) draw_limits(ui);
    ImGui::Spacing();
}

} // namespace pourbook

#include "gui/panels/goal_fields.hpp"

#include "gui/state/typed_faults.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

namespace pourbook {
namespace {

constexpr const char* own_formula = "a formula of my own";

std::string names_in_formulas(const Catalogue& catalogue) {
    std::string names = "Formula\n+ - * / ^ ( ) abs min max sqrt log exp over the properties:";
    for (const Property& p : catalogue.properties)
        if (!p.is_text) names += " " + p.id;
    return names;
}

} // namespace

void draw_goals(Ui& ui, const std::string& id, std::string& chosen, float width) {
    const Goal* goal = ui.session.catalogue.goal(chosen);
    if (begin_combo(id, goal ? goal->label : own_formula, width)) {
        for (const Goal& g : ui.session.catalogue.goals) {
            if (ImGui::Selectable(g.label.c_str(), g.id == chosen)) chosen = g.id;
            ui.probe.item(id + "." + g.id, g.label);
            if (ImGui::IsItemHovered()) hover_text(ui, g.label + "\n" + g.sentence + "\n" + g.formula);
        }
        if (ImGui::Selectable(own_formula, chosen.empty())) chosen.clear();
        ui.probe.item(id + ".own", own_formula);
        end_combo();
    }
    ui.probe.item(id, chosen);
}

void draw_formula(Ui& ui, const std::string& id, const char* best_id, std::string& formula, bool& best_high) {
    constexpr double room_for_best = 150;
    text_field(ui, id, formula, "conductivity / (density * price)",
               ImGui::GetContentRegionAvail().x - (ui.narrow() ? 0 : ui.px(room_for_best)),
               [&](const std::string& t) { return formula_fault(ui.session.catalogue, t); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, names_in_formulas(ui.session.catalogue));
    flow(button_width("highest") + button_width("lowest"));
    const int clicked = choice(ui, best_id, {"highest", "lowest"}, best_high ? 0 : 1);
    if (clicked >= 0) best_high = clicked == 0;
    fault_line(ui, id);
}

} // namespace pourbook

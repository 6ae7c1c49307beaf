#include "charts/duel.hpp"
#include "gui/panels/goal_fields.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/text.hpp"

namespace pourbook {
namespace {

void draw_pick(Ui& ui, const char* id, const std::string& slug, std::string& choice_made) {
    const std::string chosen = metal_field(ui, id, slug, ui.px(230));
    if (chosen.empty()) return;
    choice_made = chosen;
    if (!is_pinned(ui.view(), chosen)) toggle_pin(ui.view(), chosen);
}

/// A and B, the ratio with its bar, and why; a picture like every chart.
void draw_card(Ui& ui, const VersusResult& result) {
    constexpr double card_height = 300, narrow_card = 470; // with the names above the verdict
    const auto slot = [&](const VersusSide& side) { return mark_of(ui.view(), side.metal->slug); };
    const std::string key = result.sentence + std::to_string(slot(result.better)) + std::to_string(slot(result.worse));
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const float height = ui.narrow() ? ui.px(narrow_card) : std::min(ui.px(card_height), room.y * 0.42F);
    chart_view(ui, "duel", key, {room.x, height}, [&](const Canvas& canvas) {
        return layout(duel_of(ui.session.catalogue, result, slot(result.better), slot(result.worse)), canvas);
    });
    ui.probe.say("versus.sentence", result.sentence);
}

} // namespace

void draw_versus(Ui& ui) {
    const VersusChoice compared = ui.session.compared();
    draw_pick(ui, "versus.first", compared.first, ui.view().versus.first);
    ImGui::SameLine();
    dim_text(ui, "against");
    flow(ui.px(230));
    draw_pick(ui, "versus.second", compared.second, ui.view().versus.second);
    ImGui::SameLine();
    dim_text(ui, "for");
    flow(ui.px(250));
    draw_goals(ui, "versus.goal", ui.view().rank.goal, ui.px(250));
    if (ui.view().rank.goal.empty()) {
        flow(ui.px(250));
        draw_formula(ui, "versus.formula", "versus.best", ui.view().rank.formula, ui.view().rank.best_high);
    }
    const Result<VersusResult>* result = ui.session.versus();
    if (!result)
        dim_text(ui, "Working it out …");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else
        draw_card(ui, **result);
    ImGui::Spacing();
    ImGui::Separator();
}

} // namespace pourbook

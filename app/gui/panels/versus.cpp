#include "gui/panels/panels.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/text.hpp"

namespace pourbook {
namespace {

void draw_pick(Ui& ui, const char* id, const std::string& slug, std::string& choice_made) {
    const std::string chosen = metal_field(ui, id, slug, ui.px(210));
    if (chosen.empty()) return;
    choice_made = chosen;
    if (!is_pinned(ui.view(), chosen)) toggle_pin(ui.view(), chosen);
}

void draw_answer(Ui& ui, const VersusResult& result) {
    ImGui::PushTextWrapPos(ImGui::GetContentRegionMax().x - ui.px(90));
    text(result.sentence);
    ImGui::PopTextWrapPos();
    ui.probe.item("versus.sentence", result.sentence);
    if (ImGui::IsItemHovered()) {
        std::string sources = result.sentence + "\n" + result.formula + "\nsources:";
        for (const std::string& key : result.sources) sources += " " + key;
        hover_text(ui, sources);
    }
    ImGui::SameLine(ImGui::GetContentRegionMax().x - ui.px(70));
    if (ImGui::SmallButton("Copy")) ImGui::SetClipboardText(result.sentence.c_str());
    ui.probe.item("versus.copy", "Copy");
}

} // namespace

void draw_versus(Ui& ui) {
    const Goal* goal = ui.session.catalogue.goal(ui.view().rank.goal);
    const VersusChoice compared = ui.session.compared();
    draw_pick(ui, "versus.first", compared.first, ui.view().versus.first);
    ImGui::SameLine();
    dim_text(ui, "against");
    ImGui::SameLine();
    draw_pick(ui, "versus.second", compared.second, ui.view().versus.second);
    ImGui::SameLine();
    dim_text(ui, "for " + (goal ? goal->label : ui.view().rank.formula) + " (as chosen in Rank)");
    const Result<VersusResult>* result = ui.session.versus();
    if (!result)
        dim_text(ui, "Working it out …");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else
        draw_answer(ui, **result);
    ImGui::Spacing();
    ImGui::Separator();
}

} // namespace pourbook

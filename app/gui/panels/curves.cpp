#include "charts/curve_chart.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

namespace pourbook {
namespace {

void draw_properties(Ui& ui) {
    const Property* chosen = ui.session.catalogue.property(ui.view().curves.property);
    if (begin_combo("property", chosen ? chosen->label : "choose a property", ui.px(330))) {
        for (const Property& p : ui.session.catalogue.properties) {
            if (!p.varies_with_temperature) continue;
            if (ImGui::Selectable(p.label.c_str(), &p == chosen)) ui.view().curves.property = p.id;
            ui.probe.item("property." + p.id, p.label);
        }
        ImGui::EndCombo();
    }
    ui.probe.item("property", ui.view().curves.property);
}

void draw_choice(Ui& ui) {
    CurveChoice& made = ui.view().curves;
    draw_properties(ui);
    ImGui::SameLine();
    if (const int c = choice(ui, "scale", {"linear", "logarithmic"}, made.log ? 1 : 0); c >= 0) made.log = c == 1;
    ImGui::SameLine();
    if (const int c = choice(ui, "degrees", {"K", "°C"}, made.celsius ? 1 : 0); c >= 0) made.celsius = c == 1;
    ImGui::SameLine();
    small_dim_text(ui, "point at a line for the number, click it for the metal's sheet");
}

void draw_chart(Ui& ui, const CurveResult& result) {
    Session& s = ui.session;
    const CurveLook look{ui.view().curves.log, ui.view().curves.celsius, s.units()};
    const std::string key = std::to_string(s.curves_serial()) + (look.log ? "g" : "n") + (look.celsius ? "c" : "k") +
                            (ui.view().workshop_units ? "w" : "s");
    for (const CurveOfMetal& c : result.curves)
        ui.probe.say("curve." + c.metal->slug,
                     c.stretches.empty() ? c.missing : std::to_string(c.stretches.size()) + " stretches");
    const std::string clicked =
        chart_view(ui, "curve.chart", key, ImGui::GetContentRegionAvail(),
                   [&](const Canvas& canvas) { return layout(curve_chart(s.catalogue, result, look), canvas); });
    if (!clicked.empty()) show_metal(s, clicked);
}

} // namespace

void draw_curves(Ui& ui) {
    draw_choice(ui);
    if (ui.view().pins.empty()) {
        dim_text(ui, "Pin one or more metals: each gets a line from the coldest to the hottest cited temperature.");
        return;
    }
    const Result<CurveResult>* result = ui.session.curves();
    if (!result)
        dim_text(ui, "Working it out …");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else
        draw_chart(ui, **result);
}

} // namespace pourbook

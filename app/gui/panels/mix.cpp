#include "charts/diagram_chart.hpp"
#include "charts/mix_chart.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/stale.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double mix_gap = 16, mix_height = 420; // points, of a chart where the window is narrow
constexpr ImGuiWindowFlags mix_still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;

void draw_diagram(Ui& ui, const MixSheet& sheet) {
    Session& s = ui.session;
    if (!sheet.diagram) {
        dim_text(ui, sheet.no_diagram);
        return;
    }
    const std::string key = std::to_string(s.mix_serial()) + (ui.view().workshop_units ? "w" : "s");
    chart_view(ui, "mix.diagram", key, rest_of_panel(ui, mix_height), [&](const Canvas& canvas) {
        return layout(diagram_chart(s.catalogue, *sheet.diagram, name_on_axis(sheet.answer->composition), s.units()),
                      canvas);
    });
}

void draw_curve(Ui& ui, const MixSheet& sheet, bool resistivity) {
    Session& s = ui.session;
    if (sheet.curves.empty()) {
        dim_text(ui, "A single element: nothing to draw against composition.");
        return;
    }
    const std::string key = std::to_string(s.mix_serial()) + (resistivity ? "r" : "c");
    const std::string clicked =
        chart_view(ui, "mix.curve", key, rest_of_panel(ui, mix_height), [&](const Canvas& canvas) {
            const MixChartLook look{resistivity, CurveUpright{sheet.curve_wt, name_on_axis(sheet.answer->composition)}};
            return layout(mix_chart(s.catalogue, sheet.curves, look), canvas);
        });
    if (s.catalogue.metal(clicked)) show_metal(s, clicked);
}

void draw_results(Ui& ui, const MixSheet& sheet, float answer_width) {
    const Stale stale(ui, has_unreadable_field(ui));
    begin_panel(ui, "mix.answer", {answer_width, 0});
    draw_mix_answer(ui, sheet);
    end_panel(ui);
    beside(ui, mix_gap);
    begin_panel(ui, "mix.charts", {0, 0}, mix_still);
    draw_mix_charts(ui, sheet);
    end_panel(ui);
}

} // namespace

void draw_mix_charts(Ui& ui, const MixSheet& sheet) {
    static const std::vector<std::string> names = {"diagram", "conductivity", "resistivity"};
    std::string& chart = ui.view().mix.chart;
    const int current = static_cast<int>(std::find(names.begin(), names.end(), chart) - names.begin());
    if (const int c = choice(ui, "mix.chart", names, current); c >= 0) chart = names[static_cast<std::size_t>(c)];
    if (chart == "conductivity" || chart == "resistivity")
        draw_curve(ui, sheet, chart == "resistivity");
    else
        draw_diagram(ui, sheet);
}

void draw_mix(Ui& ui) {
    const float room = ImGui::GetContentRegionAvail().x;
    const float left = std::clamp(room * 0.25F, ui.px(300), ui.px(380));
    begin_panel(ui, "mix.choice", {left, 0});
    draw_mix_choice(ui);
    end_panel(ui);
    beside(ui, mix_gap);
    const MixSheet* sheet = ui.session.mix();
    if (!sheet) {
        dim_text(ui, "Working it out …");
        return;
    }
    if (!sheet->answer) {
        begin_panel(ui, "mix.refused");
        warning_text(ui, sheet->answer.problem().text);
        ui.probe.item("mix.refused", sheet->answer.problem().text);
        end_panel(ui);
        return;
    }
    begin_panel(ui, "mix.results", {0, 0}, mix_still);
    draw_results(ui, *sheet, std::clamp((room - left) * 0.46F, ui.px(380), ui.px(560)));
    end_panel(ui);
}

} // namespace pourbook

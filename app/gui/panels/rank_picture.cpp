#include "charts/rank_chart.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"

namespace pourbook {
namespace {

std::string key_of(Ui& ui, std::size_t serial) {
    std::string key = std::to_string(serial) + (ui.view().workshop_units ? "w" : "s");
    for (const std::string& pin : ui.view().pins) key += "|" + pin;
    return key;
}

void follow(Ui& ui, const std::string& clicked) {
    if (clicked.empty()) return;
    ui.view().selected = clicked;
    toggle_pin(ui.view(), clicked);
}

void draw_order(Ui& ui, const RankResult& result) {
    Session& s = ui.session;
    follow(ui, chart_view(ui, "rank.chart", key_of(ui, s.ranking_serial()), ImGui::GetContentRegionAvail(),
                          [&](const Canvas& canvas) {
                              return layout(rank_chart(s.catalogue, result, s.units(), ui.view().pins), canvas);
                          }));
}

} // namespace

void draw_rank_picture(Ui& ui, const RankResult& result) {
    draw_order(ui, result);
}

} // namespace pourbook

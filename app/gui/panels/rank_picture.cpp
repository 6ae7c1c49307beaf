#include "charts/rank_chart.hpp"
#include "charts/tradeoff_chart.hpp"
#include "gui/panels/goal_fields.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/work_note.hpp"

namespace pourbook {
namespace {

constexpr double picture_height = 420; // where the window is narrow

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
    follow(ui, chart_view(ui, "rank.chart", key_of(ui, s.ranking_serial()), rest_of_panel(ui, picture_height),
                          [&](const Canvas& canvas) {
                              return layout(rank_chart(s.catalogue, result, s.units(), ui.view().pins), canvas);
                          }));
}

void draw_second_goal(Ui& ui) {
    RankChoice& made = ui.view().rank;
    if (!ui.narrow()) ImGui::SameLine();
    draw_goals(ui, "second", made.second_goal, std::min(ui.px(230), ImGui::GetContentRegionAvail().x));
    if (made.second_goal.empty())
        draw_formula(ui, "second.formula", "second.best", made.second_formula, made.second_high);
}

void draw_two_goals(Ui& ui) {
    Session& s = ui.session;
    const Result<TradeoffResult>* result = s.tradeoff();
    work_note(ui, "tradeoff.work", s.tradeoff_work());
    if (!result) return;
    if (!*result) {
        warning_text(ui, result->problem().text);
        return;
    }
    table_row(ui, "tradeoff", [&](const DocumentSetting& setting) { return document_of(**result, setting); });
    follow(ui, chart_view(ui, "tradeoff.chart", key_of(ui, s.tradeoff_serial()), rest_of_panel(ui, picture_height),
                          [&](const Canvas& canvas) {
                              return layout(tradeoff_chart(s.catalogue, **result, s.units(), ui.view().pins), canvas);
                          }));
}

} // namespace

void draw_rank_picture(Ui& ui, const RankResult& result) {
    bool& two = ui.view().rank.two_goals;
    const int clicked = choice(ui, "picture", {"this goal", "and another"}, two ? 1 : 0);
    if (clicked >= 0) two = clicked == 1;
    if (ImGui::IsItemHovered())
        hover_text(ui, "Two goals at once\nwhich metals no other beats in both; the rest in grey behind them");
    if (two) draw_second_goal(ui);
    if (two)
        draw_two_goals(ui);
    else
        draw_order(ui, result);
}

} // namespace pourbook

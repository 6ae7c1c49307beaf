// The views and the strips around them. Each draws into the current ImGui window or child.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

/// One whole frame: shortcuts, strips, the current view, the command finder. Between ImGui::NewFrame and Render.
void draw_desk(Ui& ui);

void draw_top_bar(Ui& ui);
void draw_pins(Ui& ui);
void draw_finder(Ui& ui);
/// The page of the view at hand, in the room that is left.
void draw_help(Ui& ui);
/// The sources of the value that was clicked, in the room that is left.
void draw_evidence(Ui& ui);

void draw_metals(Ui& ui);
void draw_metal_list(Ui& ui, float width);
void draw_sheet(Ui& ui);
void draw_rank(Ui& ui);
void draw_rank_choice(Ui& ui);
void draw_rank_fall(Ui& ui);
void draw_rank_picture(Ui& ui, const RankResult& result);
void draw_rank_table(Ui& ui, const RankResult& result, ImVec2 size);
void draw_curves(Ui& ui);
void draw_drop(Ui& ui);
void draw_versus(Ui& ui);
void draw_compare(Ui& ui);
/// "Save table" and "Copy table": every property of these metals.
void draw_comparison_row(Ui& ui, const std::string& id, const std::vector<const Metal*>& metals);
void draw_mix(Ui& ui);
void draw_mix_choice(Ui& ui);
void draw_mix_answer(Ui& ui, const MixSheet& sheet);
void draw_mix_charts(Ui& ui, const MixSheet& sheet);
void draw_pour(Ui& ui);
void draw_pour_choice(Ui& ui);
void draw_pour_sheet(Ui& ui, const PourSheet& sheet);
void draw_ask(Ui& ui);
void draw_trials(Ui& ui);
void draw_sources(Ui& ui);
void draw_source(Ui& ui, const Reference& reference);
void draw_coverage(Ui& ui);

/// How the views of questions/views.hpp are drawn.
struct DrawnView {
    const char* name;
    void (*draw)(Ui&);
};
constexpr DrawnView drawn_views[] = {{"metals", draw_metals},   {"rank", draw_rank}, {"curves", draw_curves},
                                     {"compare", draw_compare}, {"drop", draw_drop}, {"mix", draw_mix},
                                     {"pour", draw_pour},       {"ask", draw_ask},   {"trials", draw_trials},
                                     {"sources", draw_sources}};

} // namespace pourbook

// The views and the strips around them. Each draws into the current ImGui window or child.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

/// One whole frame: shortcuts, strips, the current view, what is asked. Between ImGui::NewFrame and Render.
void draw_desk(Ui& ui);

void draw_top_bar(Ui& ui);
void draw_pins(Ui& ui);
/// The field at the top: a question, or the name of anything; its answer while it is typed.
void draw_ask_field(Ui& ui);
/// What was found, below the field, over the view.
void draw_ask_found(Ui& ui);
/// The page of the view at hand, in the room that is left.
void draw_help(Ui& ui);
/// The sources of the value that was clicked, in the room that is left.
void draw_evidence(Ui& ui);

/// The band above a view: what it answers, how surely.
void draw_view_answer(Ui& ui);

void draw_start(Ui& ui);
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
void draw_pour_drawing(Ui& ui, const PourSheet& sheet);
/// Over the whole window, where it is open.
void draw_pouring_mode(Ui& ui);
void draw_all_questions(Ui& ui);
void draw_trials(Ui& ui);
void draw_sources(Ui& ui);
void draw_source(Ui& ui, const Reference& reference);
void draw_coverage(Ui& ui);

/// How the views of questions/views.hpp are drawn.
struct DrawnView {
    const char* name;
    void (*draw)(Ui&);
};
constexpr DrawnView drawn_views[] = {
    {"start", draw_start},   {"metals", draw_metals},   {"rank", draw_rank},
    {"curves", draw_curves}, {"compare", draw_compare}, {"drop", draw_drop},
    {"mix", draw_mix},       {"pour", draw_pour},       {"questions", draw_all_questions},
    {"trials", draw_trials}, {"sources", draw_sources}};

} // namespace pourbook

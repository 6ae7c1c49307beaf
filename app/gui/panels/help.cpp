#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/help_text.hpp"
#include "gui/widgets/text.hpp"
#include "help/pages.hpp"

#include <cmath>

namespace pourbook {
namespace {

bool escaped() {
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape)) && !ImGui::GetIO().WantTextInput;
}

/// Returns true when it is to be closed.
bool draw_head(Ui& ui) {
    ImGui::AlignTextToFramePadding();
    if (!ui.tour)
        dim_text(ui, "Help");
    else if (word_button(ui, "help.tour.leave", "leave the tour: this view's page", false))
        ui.tour = false;
    const std::string close = "close  " + action("help")->shortcut.text();
    ImGui::SameLine(ImGui::GetContentRegionMax().x - ImGui::CalcTextSize(close.c_str()).x -
                    2 * ImGui::GetStyle().FramePadding.x);
    return word_button(ui, "help.close", close, false);
}

/// Between the view and the help.
void draw_edge(const Ui& ui) {
    const ImVec2 low = ImGui::GetWindowPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRectFullScreen(); // the padding is outside of what a window draws in
    list.AddRectFilled(low, {low.x + ui.px(1), low.y + ImGui::GetWindowHeight()}, u32(ui.colours().line));
    list.PopClipRect();
}

} // namespace

void draw_help(Ui& ui) {
    ui.tour = ui.tour && ui.view().view != "start";
    const HelpPage* page = help_page(ui.tour ? "start" : ui.view().view);
    if (!page) return;
    ImGui::PushStyleColor(ImGuiCol_ChildBg, u32(ui.colours().raised));
    ImGui::BeginChild("help", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding | ImGuiWindowFlags_NoScrollbar);
    ImGui::PopStyleColor();
    draw_edge(ui);
    if (draw_head(ui) || (escaped() && !ui.session.passing.ask.open)) {
        ui.view().help = false;
        ui.tour = false;
    }
    ImGui::BeginChild(page->name.c_str()); // each page keeps its own place
    if (const Action* step = help_text(ui, page->blocks)) {
        ui.tour = page->name == "start"; // its page stays beside each step
        step->run(ui.session);
    }
    ui.probe.say("help.unseen", std::to_string(std::lround(ImGui::GetScrollMaxY()))); // pixels to scroll
    ImGui::EndChild();
    ui.probe.say("help.page", page->name);
    ImGui::EndChild();
}

} // namespace pourbook

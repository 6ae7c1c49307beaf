#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/picture_room.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>
#include <utility>

namespace pourbook {
namespace {

constexpr double side_width = 400, least_view = 1252;   // of a window of 1280: what every view is laid out for
constexpr double least_table = 860, least_start = 1000; // of the views that need less

bool pressed(const Shortcut& s) {
    const ImGuiIO& io = ImGui::GetIO();
    return s.key && ImGui::IsKeyPressed(static_cast<ImGuiKey>(s.key), false) && io.KeyCtrl == s.ctrl &&
           io.KeyShift == s.shift && !io.KeyAlt;
}

/// A text field keeps its own undo; every other shortcut works while typing too.
bool belongs_to_field(const Action& a) {
    return ImGui::GetIO().WantTextInput && a.shortcut.key == 'Z';
}

/// The name, and the one field from which everything can be reached.
void draw_title_bar(Ui& ui) {
    const TextLook look(ui.fonts.heading, ui.colours().ink);
    ImGui::AlignTextToFramePadding();
    text("Pourbook");
    ui.probe.item("start", "Pourbook");
    if (ImGui::IsItemHovered()) ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
    if (ImGui::IsItemClicked()) ui.view().view = "start";
    ImGui::PushFont(ui.fonts.body);
    draw_ask_field(ui);
    ImGui::PopFont();
}

/// Ctrl and plus where it stands above another sign, or on the number pad.
bool asks_larger() {
    constexpr int pad_plus = 334;
    const ImGuiIO& io = ImGui::GetIO();
    const bool above = io.KeyShift && ImGui::IsKeyPressed(static_cast<ImGuiKey>('='), false);
    return io.KeyCtrl && (above || ImGui::IsKeyPressed(static_cast<ImGuiKey>(pad_plus), false));
}

/// Where no figure was clicked yet, that of the metal at hand.
void toggle_evidence(Ui& ui) {
    Evidence& e = ui.evidence;
    const bool new_metal = !e.open && ui.view().view == "metals" && e.metal != ui.view().selected;
    if (e.metal.empty() || new_metal) e.metal = ui.view().selected;
    if (e.property.empty()) e.property = "conductivity";
    e.open = !e.open;
}

void run_shortcuts(Ui& ui) {
    for (const Action& a : actions())
        if (pressed(a.shortcut) && !belongs_to_field(a)) a.run(ui.session);
    if (asks_larger()) action("letters.larger")->run(ui.session);
    if (std::exchange(ui.session.passing.evidence, false)) toggle_evidence(ui);
}

void draw_view(Ui& ui) {
    const std::string view = ui.view().view; // a click inside may change it
    for (const DrawnView& v : drawn_views)
        if (view == v.name) v.draw(ui);
}

/// Help and evidence cover the view of a narrow window: another one that is opened comes to the front.
void come_to_front(Ui& ui) {
    if (ui.front.view != ui.view().view) {
        ui.evidence.open = false;
        if (ui.front.help) ui.view().help = false;
    }
    ui.front = {ui.view().view, ui.view().help};
}

/// The view, and the evidence or the help beside it; where there is no room for both, these cover the right of the
/// view.
void draw_view_and_side(Ui& ui) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const bool beside = ui.view().help || ui.evidence.open;
    const float room = ImGui::GetContentRegionAvail().x, help = beside ? ui.px(side_width) : 0;
    const std::string& name = ui.view().view;
    const double least = ui.evidence.open && (name == "metals" || name == "compare") ? least_table
                         : name == "start"                                           ? least_start
                                                                                     : least_view;
    const float view = std::min(room, std::max(room - help, ui.px(least)));
    ImGui::BeginChild("view", {view, 0}, false, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    draw_view(ui);
    ImGui::EndChild();
    if (!beside) return;
    ImGui::SetCursorScreenPos({low.x + room - help, low.y});
    ui.evidence.open ? draw_evidence(ui) : draw_help(ui);
}

/// In every view, for every answer may lack something; Trials says it among its lists.
void draw_workshop_fault(Ui& ui) {
    const std::string& fault = ui.session.workshop.fault();
    if (fault.empty() || ui.view().view == "trials") return;
    warning_text(ui, fault);
    ui.probe.item("workshop.fault", fault);
}

/// A link that can't be read, while what it led to is shown.
void draw_link_fault(Ui& ui) {
    std::string& fault = ui.session.passing.link_fault;
    if (fault.empty()) return;
    warning_text(ui, fault);
    ui.probe.item("link.fault", fault);
    if (ImGui::IsMouseClicked(0)) fault.clear();
}

/// What was kept or taken back last, for a while, below everything; it can be taken back here too.
void draw_told(Ui& ui) {
    constexpr double seen_s = 8;
    std::string& told = ui.session.passing.told;
    if (told != ui.told) ui.told = told, ui.told_at_s = ImGui::GetTime();
    if (ImGui::GetTime() - ui.told_at_s > seen_s) told.clear();
    if (told.empty()) return;
    const ImVec2 room = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({room.x / 2, room.y - ui.px(12)}, ImGuiCond_Always, {0.5F, 1});
    constexpr ImGuiWindowFlags small = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoSavedSettings |
                                       ImGuiWindowFlags_AlwaysAutoResize | ImGuiWindowFlags_NoFocusOnAppearing;
    ImGui::PushStyleColor(ImGuiCol_WindowBg, u32(ui.colours().pressed));
    ImGui::Begin("told", nullptr, small);
    ImGui::AlignTextToFramePadding();
    text(fitted(told, room.x - ui.px(160)));
    ui.probe.item("told", told);
    if (ui.session.history.undoes_file()) {
        ImGui::SameLine();
        if (ImGui::Button("undo")) ui.session.undo_last();
        ui.probe.item("told.undo", "undo");
    }
    ImGui::SameLine();
    if (ImGui::Button("×##told")) told.clear();
    ui.probe.item("told.close", "");
    ImGui::End();
    ImGui::PopStyleColor();
}

/// All that stands below the top of the window.
void draw_below_top(Ui& ui) {
    if (ui.view().view != "start") draw_pins(ui);
    ImGui::Separator();
    draw_workshop_fault(ui);
    draw_link_fault(ui);
    draw_view_answer(ui);
    ui.narrow() ? draw_view(ui) : draw_view_and_side(ui);
}

/// One page that scrolls, each view's at its own place; evidence or help in its stead.
void draw_page(Ui& ui) {
    come_to_front(ui);
    if (ui.evidence.open) return draw_evidence(ui);
    if (ui.view().help) return draw_help(ui);
    ImGui::BeginChild(("page." + ui.view().view).c_str());
    draw_below_top(ui);
    ImGui::EndChild();
}

} // namespace

void draw_desk(Ui& ui) {
    ui.probe.begin_frame();
    ui.moving = false;
    if (ui.resting.frame < ImGui::GetFrameCount() - 1) ui.resting.waiting = false; // the pointer went on
    ui.session.keep_catalogue();
    ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard; // a list with the focus takes it away for a frame
    run_shortcuts(ui);
    const TouchSizes sizes(ui);
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
    constexpr ImGuiWindowFlags whole = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                                       ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBringToFrontOnFocus |
                                       ImGuiWindowFlags_NoScrollWithMouse;
    ImGui::Begin("desk", nullptr, whole);
    draw_title_bar(ui);
    draw_top_bar(ui);
    ui.narrow() ? draw_page(ui) : draw_below_top(ui);
    ImGui::End();
    std::string& leaving = ui.session.passing.leaving; // nothing here that could be saved, or only a table
    leaving = leaving == "frame" ? "frame table" : "";
    draw_ask_found(ui);
    draw_picture_room(ui);
    draw_pouring_mode(ui);
    draw_told(ui);
    ui.probe.say("view", ui.view().view);
}

} // namespace pourbook

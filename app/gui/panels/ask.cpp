#include "gui/actions/open_asked.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/take_keyboard.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "gui/widgets/theme.hpp"

#include <imgui_stdlib.h>

#include <algorithm>

namespace pourbook {
namespace {

constexpr double widest_field = 640;
constexpr const char* ask_hint = "Ask: silicon bronze against gunmetal, why do castings sink, za-12, -196 °C   ( / )";

bool tapped(ImGuiKey key) {
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key));
}

/// Marks the up and down keys as used by the field, so that they move among what was found.
int keep_up_and_down(ImGuiInputTextCallbackData*) {
    return 0;
}

/// A slash where nothing is being typed, whatever key of the keyboard writes it.
bool slash_typed() {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.WantTextInput) return false;
    return std::any_of(io.InputQueueCharacters.begin(), io.InputQueueCharacters.end(),
                       [](ImWchar sign) { return sign == '/'; });
}

void leave(AskField& field) {
    field = {};
}

void take(Ui& ui, const AskFound& found, std::size_t at) {
    if (at < found.entries.size()) open_entry(ui.session, found, found.entries[at]);
    leave(ui.session.passing.ask);
}

void move(AskField& field, std::size_t count) {
    if (tapped(ImGuiKey_DownArrow)) ++field.at;
    if (tapped(ImGuiKey_UpArrow) && field.at > 0) --field.at;
    field.at = std::min(field.at, count ? count - 1 : 0);
}

/// As large as answers are, and how far it can be trusted said in the same sentence.
void draw_sentence(Ui& ui, const std::string& words) {
    const AskSaid* said = ui.session.ask.said(words, ui.session.units(), ui.session.ask_under());
    if (!said || said->words != words) return dim_text(ui, "…");
    if (!said->sentence.empty()) {
        const TextLook look(ui.fonts.large, ui.colours().ink);
        wrapped_text(said->sentence, ui.colours().ink);
    }
    ui.probe.say("ask.sentence", said->sentence);
    if (!said->fault.empty()) wrapped_text(said->fault, ui.colours().warning);
    ui.probe.say("ask.fault", said->fault);
    if (!said->caution.empty()) wrapped_text("Caution: " + said->caution, ui.colours().dim);
}

/// True where it was clicked.
bool draw_entry(Ui& ui, const AskEntry& entry, std::size_t place, bool current) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    small_dim_text(ui, name_of(entry.kind));
    ImGui::TableNextColumn();
    const std::string id = "ask.entry." + std::to_string(place);
    const std::string label = fitted(entry.label, ImGui::GetContentRegionAvail().x);
    const bool clicked = ImGui::Selectable((label + "##" + id).c_str(), current);
    ui.probe.item(id, std::string(name_of(entry.kind)) + ": " + entry.label);
    if (ui.narrow()) return clicked;
    ImGui::TableNextColumn();
    small_fitted_text(ui, entry.detail);
    return clicked;
}

/// The entry clicked, else one past the last.
std::size_t draw_entries(Ui& ui, const AskFound& found) {
    std::size_t clicked = found.entries.size();
    const bool details = !ui.narrow();
    const ListRows rows;
    if (!ImGui::BeginTable("entries", details ? 3 : 2, ImGuiTableFlags_SizingFixedFit)) return clicked;
    ImGui::TableSetupColumn("kind", ImGuiTableColumnFlags_WidthFixed, ui.px(76));
    ImGui::TableSetupColumn("label", details ? ImGuiTableColumnFlags_WidthFixed : ImGuiTableColumnFlags_WidthStretch);
    if (details) ImGui::TableSetupColumn("detail", ImGuiTableColumnFlags_WidthStretch);
    for (std::size_t i = 0; i < found.entries.size(); ++i)
        if (draw_entry(ui, found.entries[i], i, i == ui.session.passing.ask.at)) clicked = i;
    ImGui::EndTable();
    return clicked;
}

void draw_found(Ui& ui, const AskFound& found) {
    AskField& field = ui.session.passing.ask;
    if (found.read.asked != Asked::nothing) {
        draw_sentence(ui, field.text);
        ImGui::Separator();
    }
    move(field, found.entries.size());
    const std::size_t clicked = draw_entries(ui, found);
    if (found.entries.empty())
        dim_text(ui, "Nothing here is called so: name a metal, a property, a goal, a fault of a casting.");
    if (clicked < found.entries.size()) return take(ui, found, clicked);
    if (field.go) take(ui, found, field.at);
}

} // namespace

void draw_ask_field(Ui& ui) {
    AskField& field = ui.session.passing.ask;
    const float room = ImGui::GetWindowContentRegionMax().x, middle = std::min(ui.px(widest_field), room / 2);
    ui.narrow() ? ImGui::SameLine() : ImGui::SameLine((room - middle) / 2);
    const float width = ui.narrow() ? ImGui::GetContentRegionAvail().x : middle;
    if (field.focus || slash_typed()) take_keyboard();
    field.focus = false;
    ImGui::SetNextItemWidth(width);
    const std::string before = field.text;
    const bool entered = ImGui::InputTextWithHint(
        "##ask", fitted_hint(ask_hint, width).c_str(), &field.text,
        ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_CallbackHistory, keep_up_and_down);
    field.active = ImGui::IsItemActive();
    ui.probe.item("ask", field.text);
    if (field.text == "/") field.text.clear(); // the key that led here
    if (field.text != before) {
        field.at = 0;
        field.go = false;
    }
    field.open = !field.text.empty() && (field.active || field.open || entered);
    if (entered && !field.text.empty()) field.go = true;
    if (tapped(ImGuiKey_Escape)) leave(field);
}

void draw_ask_found(Ui& ui) {
    AskField& field = ui.session.passing.ask;
    if (!field.open) return;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    const float width = std::min(ui.px(widest_field + 2 * theme::wide), display.x - ui.px(2 * theme::near));
    ImGui::SetNextWindowPos({display.x / 2, ui.px(ui.narrow() ? 48 : 44)}, ImGuiCond_Always, {0.5F, 0});
    ImGui::SetNextWindowSize({width, 0});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, u32(ui.colours().raised));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::Begin("ask.found", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoFocusOnAppearing);
    const bool over = ImGui::IsWindowHovered(ImGuiHoveredFlags_AllowWhenBlockedByActiveItem);
    const AskFound* found = ui.session.ask.found(field.text);
    if (found && found->words == field.text)
        draw_found(ui, *found);
    else
        dim_text(ui, "…");
    ImGui::End();
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    if (!field.active && !over && !field.go) field.open = false;
}

} // namespace pourbook

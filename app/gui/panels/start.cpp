// What a first start opens on: the race of our own scenario, and four questions with their answers.
#include "gui/actions/open_asked.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/window_words.hpp"
#include "gui/widgets/answer_band.hpp"
#include "gui/widgets/race_view.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/theme.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr const char* what_it_is =
    "Choose the metal for what you cast: what it will do, what it costs, how to pour it, and how sure that is.";
constexpr const char* question_of_the_race =
    "For example a marble tower: through which cast sleeve does a magnet take five seconds?";
constexpr double aim_of_the_race_s = 5;

/// As many as can be read, the nearest to the aim, in their order.
std::vector<DropOfMetal> nearest_falls(const std::vector<DropOfMetal>& falls, std::size_t most) {
    const auto away = [](const DropOfMetal& d) {
        return d.result ? std::abs(d.result->fall.time_s - aim_of_the_race_s) : 1e9;
    };
    std::vector<double> all;
    for (const DropOfMetal& d : falls) all.push_back(away(d));
    std::sort(all.begin(), all.end());
    std::vector<DropOfMetal> out;
    for (const DropOfMetal& d : falls)
        if (all.size() <= most || away(d) <= all[most - 1]) out.push_back(d);
    return out;
}

void draw_race(Ui& ui, ImVec2 size) {
    const DropQuestions::Falls* falls = ui.session.drop.falls(ui.session.part_conditions());
    if (!falls || !*falls) {
        ImGui::BeginChild("race.waits", size);
        dim_text(ui, falls ? falls->problem().text : "Working it out …");
        ImGui::EndChild();
        return;
    }
    const std::string key = std::to_string(ui.session.drop.falls_serial()) + (ui.view().workshop_units ? "w" : "s") +
                            (ui.narrow() ? std::to_string(std::lround(size.x)) : "");
    race_view(
        ui, "start.race", key,
        [&] {
            const std::vector<DropOfMetal>& drops = (**falls).drops;
            const std::size_t most =
                ui.narrow() ? readable_lanes(static_cast<double>(size.x / ui.scale)) : drops.size();
            Race race = race_of(ui.session.catalogue, nearest_falls(drops, most), ui.session.units());
            if (!ui.narrow()) race.title = question_of_the_race; // else it stands above
            race.aim_s = aim_of_the_race_s;
            return race;
        },
        true, size);
}

void draw_button(Ui& ui) {
    constexpr double controls = 620;
    if (!ui.narrow()) ImGui::SetCursorPosX(std::max(0.0F, (ImGui::GetContentRegionAvail().x - ui.px(controls)) / 2));
    race_controls(ui, "start.race", true);
    flow(button_width("change it in Drop"));
    if (word_button(ui, "start.drop", "change it in Drop", false)) ui.view().view = "drop";
}

void draw_card(Ui& ui, std::size_t i, ImVec2 size) {
    const StartCard& card = start_cards[i];
    const std::string id = "start.card." + std::to_string(i);
    ImGui::PushStyleColor(ImGuiCol_ChildBg, u32(ui.colours().raised));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {ui.px(theme::apart), ui.px(theme::near)});
    ImGui::BeginChild(id.c_str(), size, false,
                      ImGuiWindowFlags_AlwaysUseWindowPadding | ImGuiWindowFlags_NoScrollWithMouse);
    const ImVec2 low = ImGui::GetWindowPos(), inside = ImGui::GetCursorPos(), room = ImGui::GetContentRegionAvail();
    {
        const TextLook look(ui.fonts.strong, ui.colours().accent);
        ImGui::PushTextWrapPos(0);
        text(card.title);
        ImGui::PopTextWrapPos();
    }
    const AskSaid* said = ui.session.ask.card(i, ui.session.units(), ui.session.ask_under());
    wrapped_text(said ? first_sentence(said->sentence) : "…", ui.colours().ink);
    ui.probe.say(id + ".answer", said ? said->sentence : "");
    const float last_line = inside.y + room.y - ImGui::GetTextLineHeight();
    if (ImGui::GetCursorPosY() <= last_line) {
        ImGui::SetCursorPos({inside.x, last_line});
        dim_text(ui, "open");
    }
    ImGui::SetCursorPos(inside);
    const bool clicked = ImGui::InvisibleButton((id + ".open").c_str(), room);
    ui.probe.item(id, card.title);
    if (ImGui::IsItemHovered())
        ImGui::GetWindowDrawList()->AddRect(low, {low.x + size.x, low.y + size.y}, u32(ui.colours().accent),
                                            ui.px(theme::radius));
    ImGui::EndChild();
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    if (clicked) open_question(ui.session, read_question(ui.session.catalogue, card.words));
}

/// As high as what is said in it.
float card_height(Ui& ui, std::size_t i, float width) {
    const float inside = width - 2 * ui.px(theme::apart);
    const auto height = [&](ImFont* font, const std::string& words) {
        ImGui::PushFont(font);
        const float y = ImGui::CalcTextSize(in_lines(words, inside).c_str(), nullptr, false, inside).y;
        ImGui::PopFont();
        return y;
    };
    const AskSaid* said = ui.session.ask.card(i, ui.session.units(), ui.session.ask_under());
    return height(ui.fonts.strong, start_cards[i].title) +
           height(ui.fonts.body, said ? in_window(first_sentence(said->sentence)) : "…") +
           ImGui::GetStyle().ItemSpacing.y + 2 * ui.px(theme::near);
}

void draw_cards_below(Ui& ui) {
    const float width = ImGui::GetContentRegionAvail().x;
    for (std::size_t i = 0; i < start_cards.size(); ++i) draw_card(ui, i, {width, card_height(ui, i, width)});
}

void draw_cards(Ui& ui, float height) {
    const float gap = ui.px(theme::apart), width = (ImGui::GetContentRegionAvail().x - 3 * gap) / 4;
    for (std::size_t i = 0; i < start_cards.size(); ++i) {
        if (i) ImGui::SameLine(0, gap);
        draw_card(ui, i, {width, height});
    }
}

/// The race, its button, the cards one below another.
void draw_narrow_start(Ui& ui) {
    constexpr double race_height = 440;
    wrapped_text(what_it_is, ui.colours().dim);
    wrapped_text(question_of_the_race, ui.colours().ink);
    draw_race(ui, {ImGui::GetContentRegionAvail().x, ui.px(race_height)});
    draw_button(ui);
    draw_cards_below(ui);
}

} // namespace

void draw_start(Ui& ui) {
    if (ui.narrow()) return draw_narrow_start(ui);
    {
        const TextLook look(ui.fonts.large, ui.colours().dim);
        const float width = ImGui::CalcTextSize(what_it_is).x;
        ImGui::SetCursorPosX(std::max(0.0F, (ImGui::GetContentRegionAvail().x - width) / 2));
        text(what_it_is);
    }
    const float cards = ui.px(144), controls = ui.px(theme::large_letter + 24);
    draw_race(ui, {ImGui::GetContentRegionAvail().x,
                   ImGui::GetContentRegionAvail().y - cards - controls - 3 * ImGui::GetStyle().ItemSpacing.y});
    draw_button(ui);
    draw_cards(ui, ImGui::GetContentRegionAvail().y);
}

} // namespace pourbook

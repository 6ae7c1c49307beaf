// Any question of the command line with all its fields, drawn from its table; the answer in words beside it.
#include "answers/askers.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/form.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "questions/metals/conditions.hpp"

#include <algorithm>

namespace pourbook {
namespace {

void draw_questions(Ui& ui) {
    for (const Asker& asker : askers()) {
        const std::string& name = asker.question->name;
        if (&asker != &askers().front()) flow(button_width(name));
        if (word_button(ui, "questions." + name, name, ui.view().questions.question == name))
            ui.view().questions.question = name;
        if (ImGui::IsItemHovered()) hover_text(ui, name + "\n" + asker.question->meaning);
    }
}

/// Parts of the form in the order of their first fields.
std::vector<std::string> places_of(const QuestionTable& question) {
    std::vector<std::string> places;
    for (const QuestionField& field : question.fields)
        if (field.place != everywhere && std::find(places.begin(), places.end(), field.place) == places.end())
            places.push_back(field.place);
    return places;
}

void draw_fields(Ui& ui, Stated& stated) {
    constexpr double label_width = 150;
    for (const std::string& place : places_of(stated.question())) {
        if (!place.empty()) {
            const TextLook look(ui.fonts.strong, ui.colours().ink);
            text(place);
        }
        draw_form(ui, stated, place, label_width);
        ImGui::Spacing();
    }
}

/// As the command line says it: a command in it must stay one.
void whole_line(const std::string& words) {
    ImGui::PushTextWrapPos(0);
    text(words);
    ImGui::PopTextWrapPos();
}

/// A line of columns, each begun where a terminal would: the letters of the window are not all of one width.
void draw_line(const std::string& line) {
    const float letter = ImGui::CalcTextSize("0").x, left = ImGui::GetCursorPosX();
    std::size_t at = line.find_first_not_of(' ');
    if (at == std::string::npos) return ImGui::NewLine();
    bool first = true;
    while (at != std::string::npos) {
        const std::size_t gap = line.find("  ", at);
        if (!first) ImGui::SameLine();
        ImGui::SetCursorPosX(left + static_cast<float>(at) * letter);
        if (first && gap == std::string::npos)
            whole_line(line.substr(at));
        else
            text(line.substr(at, gap == std::string::npos ? gap : gap - at));
        first = false;
        at = gap == std::string::npos ? gap : line.find_first_not_of(' ', gap);
    }
}

void draw_leave(Ui& ui, const Asker& asker, const Stated& stated, const std::string& words) {
    Leaving l;
    l.what = "table";
    l.name = asker.question->name;
    l.ending = ".txt";
    l.endings = ".txt or .json";
    l.made = [&](const std::string& file) -> Result<std::string> {
        if (file.ends_with(".txt")) return words;
        if (file.ends_with(".json")) return asker.json(stated, ui.session.asking());
        return unreadable("'" + file + "': its name ends in .txt or .json");
    };
    l.words = [&] { return words; };
    leave_row(ui, "questions.answer", l);
}

std::string missing_in(const Stated& stated) {
    std::string missing;
    for (const QuestionField& field : stated.question().fields)
        if (field.required && !stated.states(field.name)) missing += (missing.empty() ? "" : ", ") + label_of(field);
    return missing;
}

void draw_answer(Ui& ui, const Asker& asker, const Stated& stated) {
    if (const std::string missing = missing_in(stated); !missing.empty()) {
        dim_text(ui, "Still to be stated: " + missing + ".");
        ui.probe.item("questions.missing", missing);
        return;
    }
    const Stated asked = ui.session.asked(stated);
    const Result<std::string>* words = ui.session.said(asked);
    if (!words) return dim_text(ui, "Working it out …");
    ui.probe.say("questions.words", *words ? **words : words->problem().text);
    if (!*words) return warning_text(ui, words->problem().text);
    draw_leave(ui, asker, asked, **words);
    std::size_t from = 0;
    while (from < (*words)->size()) {
        const std::size_t to = std::min((*words)->find('\n', from), (*words)->size());
        draw_line((*words)->substr(from, to - from));
        from = to + 1;
    }
}

} // namespace

void draw_all_questions(Ui& ui) {
    draw_questions(ui);
    const Asker* found = asker(ui.view().questions.question);
    const Asker& asked = found ? *found : askers().front();
    Stated& stated = stated_for(ui.view(), *asked.question);
    wrapped_text(asked.question->meaning, ui.colours().dim);
    const float left = std::clamp(ImGui::GetContentRegionAvail().x * 0.33F, ui.px(330), ui.px(480));
    begin_panel(ui, "questions.fields", {left, 0});
    draw_fields(ui, stated);
    end_panel(ui);
    beside(ui, 18);
    constexpr double narrow_answer = 460; // its columns are a terminal's: to the side they scroll
    ImGui::BeginChild("questions.answer", rest_of_panel(ui, narrow_answer), false,
                      ui.narrow() ? ImGuiWindowFlags_HorizontalScrollbar : 0);
    draw_answer(ui, asked, stated);
    ImGui::EndChild();
}

} // namespace pourbook

#include "gui/widgets/form.hpp"

#include "answers/writers/page.hpp"
#include "gui/state/shape_words.hpp"
#include "gui/state/typed_quantity.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/quantity_field.hpp"
#include "gui/widgets/shape_fields.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string id_of(const Stated& stated, const QuestionField& field) {
    return stated.question().name + "." + field.name;
}

std::string hover_of(const QuestionField& field) {
    return label_of(field) + "\n" + help_of(field);
}

std::string fault_of(const Ui& ui, const QuestionField& field, const std::string& text) {
    const auto fault = text.empty() ? std::optional<Problem>() : field.fault(text, ui.session.catalogue);
    if (!fault) return "";
    const std::string option =
        (field.by_place ? "" : "--") + field.name + " '" + text + "': "; // the command line's way
    const std::string why = fault->text.starts_with(option) ? fault->text.substr(option.size()) : fault->text;
    return label_of(field) + ": " + why;
}

/// As it is written here: without the quotes that a shell needs, one where several may be stated.
std::string example_of(const QuestionField& field) {
    std::string example = field.commas ? field.example.substr(0, field.example.find(',')) : field.example;
    std::erase(example, '"');
    if (const std::size_t at = example.find("+-"); at != std::string::npos) example.replace(at, 2, "±");
    return example;
}

/// The unit in which people state it, that of its example; empty where it is no quantity.
std::string unit_of(const QuestionField& field) {
    const bool quantity = field.type == AskType::quantity || field.type == AskType::difference;
    return quantity ? split_quantity(example_of(field)).unit : "";
}

/// True where another text was kept.
bool draw_text(Ui& ui, const QuestionField& field, const std::string& id, std::string& text, float width) {
    const std::string hint = in_print(field.absent.empty() ? "such as " + example_of(field) : field.absent);
    const auto fault = [&](const std::string& typed) { return fault_of(ui, field, typed); };
    const std::string unit = unit_of(field);
    const bool shape = !shape_forms(field.name).empty();
    const bool kept = shape          ? shape_fields(ui, id, field.name, text, width, fault)
                      : unit.empty() ? text_field(ui, id, text, hint.c_str(), width, fault)
                                     : quantity_field(ui, id, text, {unit, hint, width}, fault);
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, hover_of(field));
    return kept;
}

void draw_one(Ui& ui, Stated& stated, const QuestionField& field, const std::string& id) {
    std::string text = stated.text(field.name);
    if (draw_text(ui, field, id, text, ImGui::GetContentRegionAvail().x)) stated.set(field.name, text);
    fault_line(ui, id);
}

/// A line for each text, and a button for one more.
void draw_many(Ui& ui, Stated& stated, const QuestionField& field, const std::string& id, double label_width) {
    Texts texts = stated.texts(field.name);
    std::size_t removed = texts.size();
    bool changed = false;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const std::string line = id + "." + std::to_string(i);
        const bool removable = texts.size() > 1 || !field.required;
        if (i) field_label(ui, "and", help_of(field), label_width);
        changed |= draw_text(ui, field, line, texts[i], ImGui::GetContentRegionAvail().x - (removable ? ui.px(30) : 0));
        if (removable) {
            ImGui::SameLine(0, ui.px(4));
            if (ImGui::Button(("×##" + line).c_str())) removed = i;
            ui.probe.item(line + ".remove", "");
        }
        fault_line(ui, line);
    }
    if (removed < texts.size()) {
        texts.erase(texts.begin() + static_cast<std::ptrdiff_t>(removed));
        ui.drafts.clear(); // the fields below move up
        changed = true;
    }
    if (!texts.empty()) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + ui.px(label_width));
    if (ImGui::Button(("add##" + id).c_str())) {
        texts.push_back(field.type == AskType::metal ? ui.view().selected : example_of(field));
        changed = true;
    }
    ui.probe.item(id + ".add", "");
    if (changed) stated.set_all(field.name, texts);
}

void draw_choice(Ui& ui, Stated& stated, const QuestionField& field, const std::string& id) {
    const std::string& chosen = stated.text(field.name);
    const std::string& usual = field.absent.empty() ? field.choices.front() : field.absent;
    if (begin_combo(id, chosen.empty() ? usual : chosen, ImGui::GetContentRegionAvail().x)) {
        for (const std::string& word : field.choices) {
            if (ImGui::Selectable(word.c_str(), word == (chosen.empty() ? usual : chosen)))
                stated.set(field.name, word == usual ? "" : word);
            ui.probe.item(id + "." + word, word);
        }
        end_combo();
    }
    ui.probe.item(id, stated.text(field.name));
    if (ImGui::IsItemHovered()) hover_text(ui, hover_of(field));
}

void draw_metal(Ui& ui, Stated& stated, const QuestionField& field, const std::string& id) {
    const std::string chosen = metal_field(ui, id, stated.text(field.name), ImGui::GetContentRegionAvail().x);
    if (!chosen.empty()) stated.set(field.name, chosen);
    if (ImGui::IsItemHovered()) hover_text(ui, hover_of(field));
}

void draw_flag(Ui& ui, Stated& stated, const QuestionField& field, const std::string& id) {
    bool on = stated.states(field.name);
    if (ImGui::Checkbox((label_of(field) + "##" + id).c_str(), &on)) stated.set_flag(field.name, on);
    ui.probe.item(id, on ? "on" : "off");
    if (ImGui::IsItemHovered()) hover_text(ui, hover_of(field));
}

/// What only a drawing has is not asked of a part in words.
bool applies(const Stated& stated, const QuestionField& field) {
    if (field.name != "stl-unit") return true;
    const Texts& parts = stated.texts("part");
    return std::any_of(parts.begin(), parts.end(), [](const std::string& part) { return part.starts_with("stl:"); });
}

} // namespace

void draw_form_field(Ui& ui, Stated& stated, const QuestionField& field, double label_width) {
    const std::string id = id_of(stated, field);
    if (field.type == AskType::flag) return draw_flag(ui, stated, field, id);
    field_label(ui, label_of(field).c_str(), help_of(field), label_width);
    if (field.many) return draw_many(ui, stated, field, id, label_width);
    if (field.type == AskType::choice) return draw_choice(ui, stated, field, id);
    if (field.type == AskType::metal) return draw_metal(ui, stated, field, id);
    draw_one(ui, stated, field, id);
}

void draw_form(Ui& ui, Stated& stated, const std::string& place, double label_width) {
    for (const QuestionField& field : stated.question().fields)
        if (field.place == place && applies(stated, field)) draw_form_field(ui, stated, field, label_width);
}

} // namespace pourbook

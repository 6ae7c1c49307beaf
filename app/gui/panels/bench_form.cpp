// The form of one entry of the workshop's file.
#include "core/workshop/check_entry.hpp"
#include "gui/panels/bench.hpp"
#include "gui/state/shape_words.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/shape_fields.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/pour/defects.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

/// A new drop starts with the magnet and the tube of Drop, where nothing of them is written yet.
void take_setup_of_drop(Ui& ui, const Kind& kind, Entry& entry) {
    const SetupWords& s = ui.view().drop_setup;
    const std::array<std::pair<const char*, const std::string*>, 8> words = {
        {{"magnet", &s.magnet},
         {"grade", &s.grade},
         {"br", &s.br},
         {"surface_field", &s.surface_field},
         {"recoil_permeability", &s.recoil_permeability},
         {"magnet_mass", &s.magnet_mass},
         {"magnet_at", &s.magnet_at},
         {"tube", &s.tube}}};
    const auto written = [&](const auto& word) { return !text_of(kind, entry, word.first).empty(); };
    const bool no_plain_tube = !s.slits.empty() || !s.off_axis.empty(); // a trial knows neither
    if (entry.id || no_plain_tube || std::any_of(words.begin(), words.end(), written)) return;
    for (const auto& [field, word] : words) entry.values[kind.at(field)] = *word;
}

} // namespace

EntryDesk& entry_desk(Ui& ui) {
    return ui.session.passing.entry;
}

Entry fresh_entry(Ui& ui, const Kind& kind) {
    Entry entry = form_entry(kind);
    if (kind.name == "trial") take_setup_of_drop(ui, kind, entry);
    return entry;
}

void open_entry(Ui& ui, const Kind& kind, const Entry& entry) {
    entry_desk(ui) = {kind.name, entry, entry, "", ui.session.workshop.serial()};
    ui.drafts.clear();
}

void open_kind(Ui& ui, const Kind& kind) {
    const auto& entries = ui.session.workshop.entries(kind);
    open_entry(ui, kind, entries.empty() ? fresh_entry(ui, kind) : entries.back());
}

namespace {

std::string label_of(const Field& field) {
    std::string words = field.name == "br" ? "remanence" : field.name;
    std::replace(words.begin(), words.end(), '_', ' ');
    return words + (field.required ? " *" : "");
}

/// The fault of this field alone; what others lack is said when the entry is kept.
std::string field_fault_of(Ui& ui, const Kind& kind, std::size_t field, const std::string& text) {
    Entry entry = entry_desk(ui).entry;
    entry.values[field] = as_kept(kind.fields[field], text);
    const Result<Entry> fit = checked(kind, entry, ui.session.catalogue);
    const bool mine = !fit && fit.problem().column == static_cast<int>(field) + 1;
    return mine && !text.empty() ? label_of(kind.fields[field]) + ": " + fit.problem().text : "";
}

void draw_choice_field(Ui& ui, const Kind& kind, const Field& field, const std::string& id, std::string& value) {
    if (begin_combo(id, value, ImGui::GetContentRegionAvail().x)) {
        for (const std::string& word : field.choices) {
            if (ImGui::Selectable((word.empty() ? "–" : word).c_str(), word == value)) {
                value = word;
                if (kind.name == "trial" && word == "drop") take_setup_of_drop(ui, kind, entry_desk(ui).entry);
            }
            ui.probe.item(id + "." + word, word);
        }
        end_combo();
    }
    ui.probe.item(id, value);
}

/// A metal is typed, or chosen from the list beside it; a shape has a field for each size.
void draw_text(Ui& ui, const Kind& kind, std::size_t i, const std::string& id, std::string& value) {
    const Field& field = kind.fields[i];
    const bool metal = field.type == FieldType::metal;
    const float list = metal ? ui.px(44) : 0;
    if (!shape_forms(field.name).empty()) {
        shape_fields(ui, id, field.name, value, ImGui::GetContentRegionAvail().x,
                     [&](const std::string& text) { return field_fault_of(ui, kind, i, text); });
        return;
    }
    const std::string hint = field.example.empty() ? field.meaning : "such as " + field.example;
    const bool left = text_field(
        ui, id, value, hint.c_str(), ImGui::GetContentRegionAvail().x - list,
        [&](const std::string& text) { return field_fault_of(ui, kind, i, text); },
        metal ? metal_name(ui.session.catalogue, value) : "");
    if (left) value = as_kept(field, value);
    if (!metal) return;
    ImGui::SameLine(0, ui.px(4));
    const std::string chosen = metal_field(ui, id + ".list", "", ui.px(40));
    if (!chosen.empty()) value = chosen;
}

void draw_field(Ui& ui, const Kind& kind, std::size_t i, float label_width) {
    const Field& field = kind.fields[i];
    const std::string id = "field." + field.name;
    ImGui::AlignTextToFramePadding();
    dim_text(ui, label_of(field));
    if (ImGui::IsItemHovered()) hover_text(ui, label_of(field) + "\n" + field.meaning);
    ImGui::SameLine(label_width);
    std::string& value = entry_desk(ui).entry.values[i];
    if (field.type == FieldType::choice)
        draw_choice_field(ui, kind, field, id, value);
    else
        draw_text(ui, kind, i, id, value);
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, label_of(field) + "\n" + field.meaning);
    fault_line(ui, id);
}

/// The file's last change, also one of another day; one made here is taken out of what Ctrl+Z takes back.
void undo_file(Ui& ui, const Kind& kind) {
    if (ui.session.history.undoes_file())
        ui.session.undo_last();
    else if (const auto problem = ui.session.workshop.undo())
        entry_desk(ui).fault = problem->text;
    open_kind(ui, kind);
}

void draw_buttons(Ui& ui, const Kind& kind) {
    EntryDesk& open = entry_desk(ui);
    if (ImGui::Button("keep")) {
        const Entry as_opened = open.as_opened;
        const Result<Entry> kept =
            ui.session.workshop.keep(ui.session.catalogue, kind, of_its_type(kind, open.entry), as_opened);
        if (kept) {
            ui.session.note_kept("kept: " + title_of(kind, *kept));
            open_entry(ui, kind, *kept);
        } else
            open.fault = kept.problem().text;
    }
    ui.probe.item("entry.keep", "keep");
    const std::string last = ui.session.workshop.last_change();
    if (!last.empty()) {
        ImGui::SameLine();
        if (ImGui::Button("undo")) undo_file(ui, kind);
        ui.probe.item("entry.undo", last);
        if (ImGui::IsItemHovered()) hover_text(ui, "Undo\n" + last);
    }
    if (open.entry.id) { // far from undo, which stays where it was when this goes
        ImGui::SameLine(0, ui.px(40));
        if (ImGui::Button("remove")) {
            const std::string why = remove_now(ui, kind, open.as_opened);
            open.fault = why;
            if (why.empty()) open_entry(ui, kind, fresh_entry(ui, kind));
        }
        ui.probe.item("entry.remove", "remove");
    }
    if (open.fault.empty()) return;
    warning_text(ui, open.fault);
    ui.probe.item("entry.fault", open.fault);
}

/// After a pour: what was seen, and on the hover what to change.
void draw_defects(Ui& ui) {
    const Result<std::vector<Defect>> key = defects(ui.session.catalogue, "");
    if (!key) return;
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("What was seen?");
    }
    for (const Defect& d : *key) {
        if (ImGui::Selectable(fitted(d.seen, ImGui::GetContentRegionAvail().x).c_str(),
                              ui.session.passing.seen == d.name))
            ui.session.passing.seen = d.name;
        ui.probe.item("seen." + d.name, d.seen);
        if (ui.session.passing.seen != d.name) continue;
        ImGui::Indent(ui.px(12));
        wrapped_text(d.name + ": " + d.change, ui.colours().ink);
        ui.probe.say("seen.change", d.change);
        source_chip(ui, "seen.source", d.entry->citation.source);
        ImGui::Unindent(ui.px(12));
    }
}

} // namespace

void draw_entry_form(Ui& ui, const Kind& kind) {
    float label_width = 0;
    for (const Field& f : kind.fields) label_width = std::max(label_width, ImGui::CalcTextSize(label_of(f).c_str()).x);
    wrapped_text(kind.meaning, ui.colours().dim);
    draw_buttons(ui, kind); // stay in sight while a long form is scrolled
    ImGui::Spacing();
    begin_panel(ui, "fields");
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (belongs(kind, entry_desk(ui).entry, kind.fields[i])) draw_field(ui, kind, i, label_width + ui.px(12));
    const bool trial = kind.name == "trial"; // other kinds have no field "type"
    if (trial && (!ui.session.passing.seen.empty() || text_of(kind, entry_desk(ui).entry, "type") == "casting"))
        draw_defects(ui);
    end_panel(ui);
}

} // namespace pourbook

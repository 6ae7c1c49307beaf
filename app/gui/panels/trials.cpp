// The workshop's own file: what was measured, what is on the shelf, what it cost, what the workshop can do.
#include "answers/workshop/entries_report.hpp"
#include "core/workshop/check_entry.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "gui/widgets/value_label.hpp"
#include "questions/pour/defects.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

struct Shelf {
    const char* kind;
    const char* label;
};
constexpr std::array shelves = {
    Shelf{"trial", "trials"},           Shelf{"stock", "stock"},       Shelf{"price", "own prices"},
    Shelf{"rate", "rates of exchange"}, Shelf{"profile", "workshop"},  Shelf{"crucible", "crucibles"},
    Shelf{"mould", "moulds"},           Shelf{"goal", "own goals"},    Shelf{"metal", "own metals"},
    Shelf{"value", "own values"},       Shelf{"question", "questions"}};

EntryDesk& desk(Ui& ui) {
    return ui.session.passing.entry;
}

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

/// The form of an entry that is not there yet.
Entry fresh_entry(Ui& ui, const Kind& kind) {
    Entry entry = form_entry(kind);
    if (kind.name == "trial") take_setup_of_drop(ui, kind, entry);
    return entry;
}

void open_entry(Ui& ui, const Kind& kind, const Entry& entry) {
    desk(ui) = {kind.name, entry, entry, "", ui.session.workshop.serial()};
    ui.drafts.clear();
}

/// The first entry of a kind, or an empty form.
void open_kind(Ui& ui, const Kind& kind) {
    const auto& entries = ui.session.workshop.entries(kind);
    open_entry(ui, kind, entries.empty() ? fresh_entry(ui, kind) : entries.back());
}

/// A form nobody has written in follows the file; what was written stays, and says why it can't be kept.
void follow_file(Ui& ui, const Kind& kind) {
    EntryDesk& open = desk(ui);
    if (open.serial == ui.session.workshop.serial()) return;
    open.serial = ui.session.workshop.serial();
    const auto& entries = ui.session.workshop.entries(kind);
    const bool still_there = std::any_of(entries.begin(), entries.end(), [&](const Entry& e) {
        return e.id == open.as_opened.id && e.values == open.as_opened.values;
    });
    if (!still_there && open.entry.values == open.as_opened.values) open_kind(ui, kind);
}

void draw_shelves(Ui& ui) {
    for (const Shelf& shelf : shelves) {
        const Kind& kind = known_kind(shelf.kind);
        const std::size_t count = ui.session.workshop.entries(kind).size();
        const std::string words = std::string(shelf.label) + (count ? "  " + std::to_string(count) : "");
        if (word_button(ui, std::string("shelf.") + shelf.kind, words, ui.view().shelf == shelf.kind)) {
            ui.view().shelf = shelf.kind;
            open_kind(ui, kind);
        }
        if (ImGui::IsItemHovered()) hover_text(ui, std::string(shelf.label) + "\n" + kind.meaning);
        ImGui::SameLine();
    }
    ImGui::NewLine();
}

/// What tells an entry apart, and a word of what it is.
std::string line_of(const Kind& kind, const Entry& entry) {
    std::string out;
    for (std::size_t i = 0; i < kind.fields.size() && i < 6; ++i)
        if (!entry.values[i].empty()) out += (out.empty() ? "" : "  ") + entry.values[i];
    return out;
}

/// A list that the import reads again without loss.
void draw_leave(Ui& ui, const Kind& kind, const std::vector<Entry>& entries) {
    Leaving l;
    l.name = kind.name;
    l.endings = ".csv or .json, to be imported again";
    l.made = [&](const std::string& file) -> Result<std::string> {
        if (file.ends_with(".json")) return json_of_entries(kind, entries);
        if (file.ends_with(".csv")) return csv_of_entries(kind, entries);
        return Problem{Problem::Kind::unreadable, "'" + file + "': a list's name ends in .csv or .json", 0};
    };
    l.words = [&] { return tabs_of_entries(kind, entries); };
    leave_row(ui, "entries.table", l);
}

void draw_list(Ui& ui, const Kind& kind) {
    const auto& entries = ui.session.workshop.entries(kind);
    if (!entries.empty()) draw_leave(ui, kind, entries);
    if (!kind.single) {
        if (ImGui::Button("new")) open_entry(ui, kind, fresh_entry(ui, kind));
        ui.probe.item("entry.new", "new");
    }
    if (entries.empty()) wrapped_text("Nothing here yet: fill in the form and keep it.", ui.colours().dim);
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(entries.size()));
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const Entry& entry = entries[static_cast<std::size_t>(i)];
            const std::string words = fitted(line_of(kind, entry), ImGui::GetContentRegionAvail().x);
            const std::string id = "entry." + std::to_string(entry.id);
            if (ImGui::Selectable((words + "##" + id).c_str(), desk(ui).entry.id == entry.id && entry.id != 0))
                open_entry(ui, kind, entry);
            ui.probe.item(id, words);
        }
}

std::string label_of(const Field& field) {
    std::string words = field.name;
    std::replace(words.begin(), words.end(), '_', ' ');
    return words + (field.required ? " *" : "");
}

/// The fault of this field alone; what others lack is said when the entry is kept.
std::string field_fault_of(Ui& ui, const Kind& kind, std::size_t field, const std::string& text) {
    Entry entry = desk(ui).entry;
    entry.values[field] = text;
    const Result<Entry> fit = checked(kind, entry, ui.session.catalogue);
    const bool mine = !fit && fit.problem().column == static_cast<int>(field) + 1;
    return mine && !text.empty() ? fit.problem().text : "";
}

void draw_choice_field(Ui& ui, const Kind& kind, const Field& field, const std::string& id, std::string& value) {
    if (begin_combo(id, value, ImGui::GetContentRegionAvail().x)) {
        for (const std::string& word : field.choices) {
            if (ImGui::Selectable((word.empty() ? "–" : word).c_str(), word == value)) {
                value = word;
                if (kind.name == "trial" && word == "drop") take_setup_of_drop(ui, kind, desk(ui).entry);
            }
            ui.probe.item(id + "." + word, word);
        }
        ImGui::EndCombo();
    }
    ui.probe.item(id, value);
}

void draw_field(Ui& ui, const Kind& kind, std::size_t i, float label_width) {
    const Field& field = kind.fields[i];
    const std::string id = "field." + field.name;
    ImGui::AlignTextToFramePadding();
    dim_text(ui, label_of(field));
    if (ImGui::IsItemHovered()) hover_text(ui, label_of(field) + "\n" + field.meaning);
    ImGui::SameLine(label_width);
    std::string& value = desk(ui).entry.values[i];
    if (field.type == FieldType::choice)
        draw_choice_field(ui, kind, field, id, value);
    else
        text_field(ui, id, value, field.example.empty() ? field.meaning.c_str() : field.example.c_str(),
                   ImGui::GetContentRegionAvail().x,
                   [&](const std::string& text) { return field_fault_of(ui, kind, i, text); });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, label_of(field) + "\n" + field.meaning);
    fault_line(ui, id);
}

void draw_buttons(Ui& ui, const Kind& kind) {
    WorkshopDesk& workshop = ui.session.workshop;
    if (ImGui::Button("keep")) {
        const Result<Entry> kept =
            workshop.keep(ui.session.catalogue, kind, of_its_type(kind, desk(ui).entry), desk(ui).as_opened);
        if (kept)
            open_entry(ui, kind, *kept);
        else
            desk(ui).fault = kept.problem().text;
    }
    ui.probe.item("entry.keep", "keep");
    if (desk(ui).entry.id) {
        ImGui::SameLine();
        if (ImGui::Button("remove")) {
            const auto problem = workshop.remove(kind, desk(ui).as_opened);
            if (problem)
                desk(ui).fault = problem->text;
            else
                open_entry(ui, kind, fresh_entry(ui, kind));
        }
        ui.probe.item("entry.remove", "remove");
    }
    const std::string last = workshop.last_change();
    if (!last.empty()) {
        ImGui::SameLine();
        if (ImGui::Button("undo")) {
            const auto problem = workshop.undo();
            open_kind(ui, kind);
            if (problem) desk(ui).fault = problem->text;
        }
        ui.probe.item("entry.undo", last);
        if (ImGui::IsItemHovered()) hover_text(ui, "Undo\n" + last);
    }
    if (desk(ui).fault.empty()) return;
    warning_text(ui, desk(ui).fault);
    ui.probe.item("entry.fault", desk(ui).fault);
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

void draw_form(Ui& ui, const Kind& kind) {
    float label_width = 0;
    for (const Field& f : kind.fields) label_width = std::max(label_width, ImGui::CalcTextSize(label_of(f).c_str()).x);
    wrapped_text(kind.meaning, ui.colours().dim);
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        if (belongs(kind, desk(ui).entry, kind.fields[i])) draw_field(ui, kind, i, label_width + ui.px(12));
    ImGui::Spacing();
    draw_buttons(ui, kind);
    const bool casting = text_of(kind, desk(ui).entry, "type") == "casting";
    if (kind.name == "trial" && (casting || !ui.session.passing.seen.empty())) draw_defects(ui);
}

void draw_what_trials_show(Ui& ui) {
    const std::vector<TrialLines>* trials = ui.session.trials();
    if (!trials) {
        dim_text(ui, "Working it out …");
        return;
    }
    if (trials->empty())
        wrapped_text("A drop, a four-wire resistance, a weighing or a casting: what it says of the metal appears here, "
                     "beside what was predicted.",
                     ui.colours().dim);
    for (const TrialLines& t : *trials) {
        const TextLook look(desk(ui).entry.id == t.id ? ui.fonts.strong : ui.fonts.body, ui.colours().ink);
        text(t.name);
        std::string all;
        for (const std::string& line : t.lines) {
            ImGui::Indent(ui.px(12));
            wrapped_text(line, ui.colours().dim);
            ImGui::Unindent(ui.px(12));
            all += (all.empty() ? "" : "\n") + line;
        }
        ui.probe.say("trial." + t.name, all);
        ImGui::Spacing();
    }
}

} // namespace

void draw_trials(Ui& ui) {
    WorkshopDesk& workshop = ui.session.workshop;
    draw_shelves(ui); // may change what is open
    const Result<const Kind*> found = kind_named(ui.view().shelf);
    const Kind& kind = found ? **found : known_kind("trial");
    if (desk(ui).kind != kind.name) open_kind(ui, kind);
    follow_file(ui, kind);
    if (!workshop.fault().empty()) warning_text(ui, workshop.fault());
    for (const std::string& remark : ui.session.remarks()) {
        warning_text(ui, remark);
        ui.probe.item("remark", remark);
    }
    small_dim_text(ui, workshop.available() ? "kept in " + workshop.path() : "this window has no workshop file");
    const float room = ImGui::GetContentRegionAvail().x;
    const bool trials = kind.name == "trial";
    ImGui::BeginChild("entries", {room * 0.26F, 0});
    draw_list(ui, kind);
    ImGui::EndChild();
    ImGui::SameLine(0, ui.px(14));
    ImGui::BeginChild("form", {trials ? room * 0.34F : room * 0.5F, 0});
    draw_form(ui, kind);
    ImGui::EndChild();
    if (!trials) return;
    ImGui::SameLine(0, ui.px(14));
    ImGui::BeginChild("shown", {0, 0});
    draw_what_trials_show(ui);
    ImGui::EndChild();
}

} // namespace pourbook

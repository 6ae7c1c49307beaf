#include "core/workshop/check_entry.hpp"
#include "gui/panels/bench.hpp"
#include "gui/panels/panels.hpp"
#include "gui/state/pasted.hpp"
#include "gui/state/typed_quantity.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <algorithm>
#include <sstream>

namespace pourbook {
namespace {

/// A bare number is in the unit of the field's example: masses in kg, falls in s.
std::string with_unit(const std::string& typed, const std::string& unit) {
    const bool bare = typed.find_first_not_of("0123456789.,") == std::string::npos;
    return bare && !unit.empty() && !typed.empty() ? typed + " " + unit : typed;
}

std::string words_of(const std::string& field) {
    std::string words = field;
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

/// The fault of this cell alone.
std::string cell_fault(Ui& ui, const Kind& kind, const Entry& entry, std::size_t field, const std::string& text) {
    if (text.empty()) return "";
    Entry tried = entry;
    tried.values[field] = as_kept(kind.fields[field], text);
    const Result<Entry> fit = checked(kind, tried, ui.session.catalogue);
    const bool mine = !fit && fit.problem().column == static_cast<int>(field) + 1;
    return mine ? words_of(kind.fields[field].name) + ": " + fit.problem().text : "";
}

/// True where another text was left in the cell.
bool draw_cell(Ui& ui, const Kind& kind, const Entry& entry, std::size_t field, const std::string& id,
               std::string& value) {
    const Field& f = kind.fields[field];
    const bool left = text_field(
        ui, id, value, "", ImGui::GetContentRegionAvail().x,
        [&](const std::string& text) { return cell_fault(ui, kind, entry, field, text); },
        f.type == FieldType::metal ? metal_name(ui.session.catalogue, value) : "");
    const std::string example = f.example.empty() ? "" : ", such as " + f.example;
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, words_of(f.name) + "\n" + f.meaning + example);
    return left;
}

void draw_kept_row(Ui& ui, const Kind& kind, const Entry& entry, bool open_here) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const std::string number = std::to_string(entry.id);
    const std::string id = (open_here ? "entry." : kind.name + ".") + number;
    const bool open = entry_desk(ui).kind == kind.name && entry_desk(ui).entry.id == entry.id;
    if (ImGui::Selectable((number + "##" + id).c_str(), open)) {
        ui.view().shelf = kind.name;
        open_entry(ui, kind, entry);
    }
    ui.probe.item(id, number);
    for (const std::string& name : grid_fields(kind)) {
        ImGui::TableNextColumn();
        const std::size_t field = kind.at(name);
        const std::string cell = "grid." + kind.name + "." + number + "." + name;
        Entry changed = entry;
        if (!draw_cell(ui, kind, entry, field, cell, changed.values[field])) continue;
        changed.values[field] = as_kept(kind.fields[field], changed.values[field]);
        ui.drafts[cell].fault = keep_now(ui, kind, changed, entry);
    }
}

/// The last row: kept as soon as nothing that is needed is missing.
void draw_fresh_row(Ui& ui, const Kind& kind) {
    Entry& fresh = ui.session.passing.fresh[kind.name];
    if (fresh.values.size() != kind.fields.size()) fresh = form_entry(kind);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    dim_text(ui, "new");
    for (const std::string& name : grid_fields(kind)) {
        ImGui::TableNextColumn();
        const std::size_t field = kind.at(name);
        const std::string cell = "grid." + kind.name + ".new." + name;
        if (!draw_cell(ui, kind, fresh, field, cell, fresh.values[field])) continue;
        fresh.values[field] = as_kept(kind.fields[field], fresh.values[field]);
        if (!missing_fields(kind, fresh).empty()) continue;
        const std::string why = keep_now(ui, kind, fresh, fresh);
        ui.drafts[cell].fault = why;
        if (why.empty()) fresh = form_entry(kind);
    }
}

void paste(Ui& ui, const Kind& kind) {
    const char* clipboard = ImGui::GetClipboardText();
    const Result<std::vector<Entry>> rows = entries_from_paste(kind, clipboard ? clipboard : "");
    std::string& fault = entry_desk(ui).fault;
    if (!rows) {
        fault = rows.problem().text;
        return;
    }
    const Result<std::size_t> kept = ui.session.workshop.keep_all(ui.session.catalogue, kind, *rows);
    fault = kept ? "" : kept.problem().text;
    if (kept) ui.session.note_kept("kept: " + std::to_string(*kept) + " pasted into " + kind.name);
}

void draw_faults(Ui& ui, const Kind& kind, const std::vector<Entry>& entries) {
    const auto tell = [&](const std::string& row) {
        for (const std::string& name : grid_fields(kind)) fault_line(ui, "grid." + kind.name + "." + row + "." + name);
    };
    for (const Entry& entry : entries) tell(std::to_string(entry.id));
    tell("new");
}

void draw_head(Ui& ui, const Kind& kind) {
    const TextLook look(ui.fonts.small, ui.colours().dim);
    ImGui::TableSetupScrollFreeze(0, 1);
    ImGui::TableSetupColumn("##number", ImGuiTableColumnFlags_WidthFixed, ui.px(30));
    for (const std::string& name : grid_fields(kind)) {
        const bool wide = name == "metal" || name == "source" || name == "material";
        const float share = wide ? 1.7F : 1;
        constexpr double narrow_cell = 110;
        if (ui.narrow())
            ImGui::TableSetupColumn(words_of(name).c_str(), ImGuiTableColumnFlags_WidthFixed,
                                    share * ui.px(narrow_cell));
        else
            ImGui::TableSetupColumn(words_of(name).c_str(), ImGuiTableColumnFlags_WidthStretch, share);
    }
    header_row(ui, 99);
}

} // namespace

std::string as_kept(const Field& field, const std::string& typed) {
    if (typed.empty()) return typed;
    if (field.type == FieldType::name) return file_name_of(typed);
    const std::string unit = split_quantity(field.example.substr(0, field.example.find(','))).unit;
    if (field.type == FieldType::quantity) return with_unit(typed, unit);
    if (field.type != FieldType::quantities) return typed;
    std::string out;
    std::istringstream each(typed);
    for (std::string one; std::getline(each, one, ',');) {
        one.erase(0, one.find_first_not_of(' '));
        out += (out.empty() ? "" : ", ") + with_unit(one, unit);
    }
    return out;
}

std::string keep_now(Ui& ui, const Kind& kind, const Entry& entry, const Entry& as_opened) {
    const Result<Entry> kept =
        ui.session.workshop.keep(ui.session.catalogue, kind, of_its_type(kind, entry), as_opened);
    if (!kept) return kept.problem().text;
    ui.session.note_kept("kept: " + title_of(kind, *kept));
    const EntryDesk& open = entry_desk(ui);
    const bool in_form =
        open.kind == kind.name && (open.entry.id == kept->id || open.entry.values == open.as_opened.values);
    if (in_form) open_entry(ui, kind, *kept);
    return "";
}

std::string remove_now(Ui& ui, const Kind& kind, const Entry& as_opened) {
    if (const auto problem = ui.session.workshop.remove(kind, as_opened)) return problem->text;
    ui.session.note_kept("removed: " + title_of(kind, as_opened));
    return "";
}

void draw_grid(Ui& ui, const Kind& kind, float height) {
    const auto entries = ui.session.workshop.shared_entries(kind); // a cell that is kept replaces the list
    const bool open_here = ui.view().shelf == kind.name;
    if (ImGui::Button(("paste from a spreadsheet##" + kind.name).c_str())) paste(ui, kind);
    ui.probe.item("grid." + kind.name + ".paste", "");
    if (ImGui::IsItemHovered())
        hover_text(ui, "Paste\nrows copied from a spreadsheet, with or without a head that names the columns");
    draw_faults(ui, kind, *entries);
    const ImGuiTableFlags sideways = ui.narrow() ? ImGuiTableFlags_ScrollX : 0;
    const ImGuiTableFlags flags = sideways | ImGuiTableFlags_ScrollY | ImGuiTableFlags_BordersInnerV;
    const float used = ImGui::GetFrameHeightWithSpacing();
    if (!ImGui::BeginTable(("grid." + kind.name).c_str(), 1 + static_cast<int>(grid_fields(kind).size()), flags,
                           {0, std::max(ui.px(90), height - used)}))
        return;
    draw_head(ui, kind);
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(entries->size()));
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i)
            draw_kept_row(ui, kind, (*entries)[static_cast<std::size_t>(i)], open_here);
    draw_fresh_row(ui, kind);
    ImGui::EndTable();
}

} // namespace pourbook

#include "gui/widgets/leave_row.hpp"

#include "answers/writers/writers.hpp"
#include "charts/table_picture.hpp"
#include "charts/words.hpp"
#include "core/quantity/temperature_text.hpp"
#include "gui/state/save_folder.hpp"
#include "gui/state/view_link.hpp"
#include "gui/widgets/picture_room.hpp"
#include "gui/widgets/take_keyboard.hpp"
#include "gui/widgets/text.hpp"
#include "platform/exchange.hpp"
#include "platform/folders.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <filesystem>

namespace pourbook {
namespace {

constexpr double widest_field = 420;

bool is_picture(const Leaving& l) {
    return l.what == std::string("picture");
}

/// Whether a shortcut asks for this: the first such line of the frame answers. A sheet answers to any.
bool asked(Ui& ui, const std::string& verb, const std::string& what) {
    std::string& leaving = ui.session.passing.leaving;
    if (what == "sheet" ? !leaving.starts_with(verb) : leaving != verb + " " + what) return false;
    leaving.clear();
    return true;
}

void tell(Ui& ui, const std::string& id, const std::string& words, bool fault) {
    ui.leaving.told_in = id;
    ui.leaving.told = words;
    ui.leaving.fault = fault;
}

std::string offered_file(Ui& ui, const Leaving& l) {
    std::string& folder = is_picture(l) ? ui.leaving.picture_folder : ui.leaving.table_folder;
    if (folder.empty()) folder = platform::save_folder(is_picture(l) ? "PICTURES" : "DOCUMENTS");
    return fresh_name(folder, l.name, l.ending);
}

/// True where the file is there.
bool save(Ui& ui, const std::string& id, const Leaving& l, const std::string& file) {
    const Result<std::string> bytes = l.made(file);
    const Result<std::string> saved = bytes ? platform::deliver(file, *bytes) : bytes;
    if (!saved) {
        tell(ui, id, saved.problem().text, true);
        return false;
    }
    const std::string folder = std::filesystem::path(file).parent_path().string();
    (is_picture(l) ? ui.leaving.picture_folder : ui.leaving.table_folder) = folder.empty() ? "." : folder;
    tell(ui, id, *saved, false);
    return true;
}

/// A file that is there already is replaced only when asked for twice.
bool may_write(Ui& ui, const std::string& id, const std::string& file) {
    std::error_code ignored;
    if (ui.leaving.warned_of == file || !std::filesystem::exists(file, ignored)) return true;
    ui.leaving.warned_of = file;
    tell(ui, id, "there is such a file: Save again to replace it", true);
    return false;
}

/// The picture itself, or the path of a file of it where the display has no clipboard for pictures.
void copy_picture(Ui& ui, const std::string& id, const Leaving& l) {
    const Result<std::string> png = l.made("picture.png");
    if (!png) return tell(ui, id, png.problem().text, true);
    if (ui.offer_picture && ui.offer_picture(*png)) return tell(ui, id, "the picture is on the clipboard", false);
    const std::string file = offered_file(ui, l);
    if (!save(ui, id, l, file)) return;
    ImGui::SetClipboardText(file.c_str());
    tell(ui, id, "path copied, " + ui.leaving.told + "; the clipboard takes no picture from this window", false);
}

void copy(Ui& ui, const std::string& id, const Leaving& l) {
    if (is_picture(l)) return copy_picture(ui, id, l);
    ImGui::SetClipboardText(l.words().c_str());
    const bool table = l.what == std::string("table");
    tell(ui, id, table ? "on the clipboard, columns separated by tabs" : "on the clipboard as text", false);
}

void draw_field(Ui& ui, const std::string& id, const Leaving& l) {
    if (ui.leaving.fresh) take_keyboard();
    ui.leaving.fresh = false;
    const float buttons = ImGui::CalcTextSize("SaveCancel").x + ui.px(60);
    ImGui::SetNextItemWidth(std::clamp(ImGui::GetContentRegionAvail().x - buttons, ui.px(80), ui.px(widest_field)));
    bool go = ImGui::InputText(("##" + id).c_str(), &ui.leaving.file, ImGuiInputTextFlags_EnterReturnsTrue);
    ui.probe.item(id + ".file", ui.leaving.file);
    if (ImGui::IsItemHovered()) hover_text(ui, std::string("Name of the file\nits ending decides: ") + l.endings);
    ImGui::SameLine();
    go = word_button(ui, id + ".go", "Save", false) || go;
    ImGui::SameLine(0, 0);
    const bool stop = word_button(ui, id + ".stop", "Cancel", false) ||
                      ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false);
    if (go && may_write(ui, id, ui.leaving.file) && save(ui, id, l, ui.leaving.file)) ui.leaving.open_in.clear();
    if (stop) ui.leaving.open_in.clear();
}

/// The address of the page with what is chosen here; only the words of a link where no page is known.
void copy_link(Ui& ui, const std::string& id) {
    const std::string words = link_words(ui.view(), first_view(ui.session.catalogue));
    ImGui::SetClipboardText((platform::page_address() + "#" + words).c_str());
    tell(ui, id, "the link is on the clipboard", false);
}

void draw_words(Ui& ui, const std::string& id, const Leaving& l) {
    constexpr double needed = 560; // for the words in full
    const bool narrow = ImGui::GetContentRegionAvail().x < ui.px(needed);
    const std::string what = l.what, of_it = narrow ? "" : " " + what;
    if (asked(ui, "copy", "link")) copy_link(ui, id);
    const bool save_now = word_button(ui, id + ".save", "Save" + of_it, false) || asked(ui, "save", what);
    flow(button_width("Copy" + of_it), 0);
    if (word_button(ui, id + ".copy", "Copy" + of_it, false) || asked(ui, "copy", what)) copy(ui, id, l);
    if (is_picture(l)) {
        flow(button_width(narrow ? "Caption" : "Copy caption"), 0);
        if (word_button(ui, id + ".caption", narrow ? "Caption" : "Copy caption", false)) {
            ImGui::SetClipboardText(l.words().c_str());
            tell(ui, id, "the caption line is on the clipboard", false);
        }
        flow(button_width(narrow ? "Link" : "Copy link"), 0);
        if (word_button(ui, id + ".link", narrow ? "Link" : "Copy link", false)) copy_link(ui, id);
    }
    if (l.frame) {
        flow(button_width("Picture"), 0);
        const char* wanted = is_picture(l) ? "frame" : "frame table";
        const bool framed = word_button(ui, id + ".frame", "Picture", false) || ui.session.passing.leaving == wanted;
        if (framed) {
            ui.session.passing.leaving.clear();
            l.frame();
        }
    }
    if (!save_now) return;
    ui.leaving.open_in = id;
    ui.leaving.file = offered_file(ui, l);
    ui.leaving.warned_of.clear();
    ui.leaving.told_in.clear();
    ui.leaving.fresh = true;
}

} // namespace

namespace {

/// Few metals with many properties: a row for each property that any of them has.
TablePicture turned(const TablePicture& table) {
    TablePicture out{table.title, {table.columns.front()}, {false}, {}, table.origin};
    for (const auto& row : table.rows) {
        out.columns.push_back(row.front());
        out.right.push_back(true);
    }
    for (std::size_t c = 1; c < table.columns.size(); ++c) {
        std::vector<std::string> cells = {table.columns[c]};
        for (const auto& row : table.rows) cells.push_back(row[c]);
        if (std::any_of(cells.begin() + 1, cells.end(), [](const std::string& cell) { return !cell.empty(); }))
            out.rows.push_back(std::move(cells));
    }
    return out;
}

/// "at 20 °C, casting, as cast ..."; nothing where the table is of no metal at a temperature.
std::string conditions_of(const Document& document) {
    std::string at, state;
    for (const DataFigure& f : document.figures) {
        if (const double* kelvin = std::get_if<double>(&f.cell.value); kelvin && f.id == "temperature_K")
            at = "at " + celsius_text(*kelvin);
        if (f.id == "state") state = f.words() == "handbook" ? ", handbook metal" : ", casting, " + f.words();
    }
    return at.empty() ? "" : at + state;
}

TablePicture table_picture(const Document& document) {
    TablePicture out;
    out.title = document.title;
    out.origin.data_version = document.data_version;
    for (const Reference* source : document.sources) out.origin.sources.push_back(source->key);
    out.origin.conditions = conditions_of(document);
    if (document.parts.empty()) return out;
    const DataTable& table = document.parts.front();
    std::vector<std::size_t> shown;
    const auto shows = [&](const DataColumn& column) {
        const bool slug = column.id == "metal" || column.id == "name"; // of the two its name
        const bool named =
            std::any_of(table.columns.begin(), table.columns.end(), [](const DataColumn& c) { return c.id == "name"; });
        if (slug && named) return column.id == "name";
        return column.id == "label" || (column.shown_in & in::window); // the window names its rows itself
    };
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        if (shows(table.columns[c])) {
            const DataColumn& column = table.columns[c];
            shown.push_back(c);
            out.columns.push_back(column.title + (column.unit.empty() ? "" : ", " + pretty_unit(column.unit)));
            out.right.push_back(column.number);
        }
    for (const auto& row : table.rows) {
        out.rows.emplace_back();
        for (const std::size_t c : shown) out.rows.back().push_back(row[c].text);
    }
    constexpr std::size_t few_rows = 6, many_columns = 8;
    return out.rows.size() <= few_rows && out.columns.size() > many_columns ? turned(out) : out;
}

} // namespace

void leave_row(Ui& ui, const std::string& id, const Leaving& leaving) {
    if (ui.leaving.open_in == id)
        draw_field(ui, id, leaving);
    else
        draw_words(ui, id, leaving);
    if (ui.leaving.told_in != id) return;
    constexpr double least_told = 120;
    flow(ui.px(least_told));
    const TextLook look(ui.fonts.small, ui.leaving.fault ? ui.colours().warning : ui.colours().dim);
    ImGui::AlignTextToFramePadding();
    const std::string shown = fitted(ui.leaving.told, ImGui::GetContentRegionAvail().x);
    text(shown);
    ui.probe.item(id + ".told", ui.leaving.told);
    if (shown != ui.leaving.told && ImGui::IsItemHovered()) hover_text(ui, ui.leaving.told);
}

void table_row(Ui& ui, const std::string& id, const std::function<Document(const DocumentSetting&)>& make) {
    const DocumentSetting setting{ui.session.catalogue, ui.session.units(), ui.session.date};
    Leaving l;
    l.name = id;
    l.made = [&](const std::string& file) -> Result<std::string> {
        const Result<TableFormat> format = table_format(file);
        if (!format) return format.problem();
        DocumentSetting used = setting;
        if (*format == TableFormat::json) used.units = UnitSystem::base;
        return written(make(used), *format);
    };
    l.words = [&] { return tab_separated(make(setting).parts.front()); };
    l.frame = [&] { open_room(ui, id + ".table"); };
    const auto picture = [&](const Canvas& canvas) { return layout(table_picture(make(setting)), canvas); };
    std::string shown = ui.view().view;
    for (const std::string& pin : ui.view().pins) shown += "|" + pin;
    offer_to_room(ui, id + ".table", shown, picture);
    leave_row(ui, id + ".table", l);
}

std::string file_name_of(const std::string& title) {
    std::string out;
    for (const char c : title) {
        const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        const bool kept = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9');
        if (kept)
            out += small;
        else if (!out.empty() && out.back() != '-')
            out += '-';
    }
    while (!out.empty() && out.back() == '-') out.pop_back();
    return out.empty() ? "chart" : out;
}

} // namespace pourbook

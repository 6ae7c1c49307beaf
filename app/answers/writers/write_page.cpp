#include "answers/writers/writers.hpp"

#include "answers/parts/citation.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string read_by_people(const DataCell& cell) {
    if (!cell.reason.empty()) return "no value: " + cell.reason;
    std::string out = cell.text;
    if (cell.uncertainty > 0) out += " ± " + significant(normal_90 * cell.uncertainty, 2);
    if (!cell.basis.empty() && cell.basis != "cited")
        out += " (" + cell.basis + ")";
    else if (!cell.how_known.empty() && cell.how_known != "read")
        out += " (" + cell.how_known + ")";
    if (!cell.mark.empty()) out += " (" + cell.mark + ")";
    if (!cell.sources.empty()) out += (out.empty() ? "[" : " [") + joined(cell.sources) + "]";
    return out;
}

/// A page says a property's label where a file for programs has its id.
bool on_page(const DataTable& data, const DataColumn& column) {
    const auto has = [&](const char* id) {
        return std::any_of(data.columns.begin(), data.columns.end(), [&](auto& c) { return c.id == id; });
    };
    if (!has("property") || !has("label")) return column.shown_in & in::file;
    return column.id == "label" || (column.id != "property" && (column.shown_in & in::file));
}

/// As it stands on a page: words alone.
DataTable printed(const DataTable& data) {
    DataTable out;
    for (const DataColumn& c : data.columns)
        if (on_page(data, c))
            out.columns.push_back(titled(c.title + (c.unit.empty() ? "" : ", " + c.unit), c.number && !c.traced));
    for (std::size_t r = 0; r < data.told(); ++r) {
        const auto& cells = data.rows[r];
        out.rows.emplace_back();
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (on_page(data, data.columns[i])) out.rows.back().push_back(DataCell::words(read_by_people(cells[i])));
    }
    return out;
}

/// What programs know as temperature_K, as people say it.
std::string condition_words(const DataFigure& f) {
    const double* kelvin = f.id.ends_with("_K") ? std::get_if<double>(&f.cell.value) : nullptr;
    std::string name = kelvin ? f.id.substr(0, f.id.size() - 2) : f.id;
    std::replace(name.begin(), name.end(), '_', ' ');
    return name + ": " + (kelvin ? celsius_text(*kelvin) : f.words());
}

bool any_uncertainty(const Document& document) {
    const auto told = document.tables(in::file);
    return std::any_of(told.begin(), told.end(), [](const DataTable* table) {
        return std::any_of(table->columns.begin(), table->columns.end(), [](const DataColumn& c) { return c.traced; });
    });
}

} // namespace

Page page_of(const Document& document) {
    Page page;
    page.title = document.title;
    std::string conditions;
    for (const DataFigure& f : document.figures)
        if (f.shown_in & in::file) conditions += (conditions.empty() ? "" : " · ") + condition_words(f);
    if (!conditions.empty()) page.subtitle.push_back(conditions);
    for (const Sentence& note : document.notes)
        if (note.shown_in & in::file) page.subtitle.push_back(note.text);
    if (any_uncertainty(document)) page.subtitle.push_back("± is each side of a 90 % interval.");
    for (const DataTable* part : document.tables(in::file)) {
        page.sections.push_back({part->title, {}, {}, {}, {}});
        page.sections.back().blocks.push_back({PageBlock::Kind::table, {}, {}, printed(*part)});
        if (const std::size_t rest = part->rows.size() - part->told())
            page.sections.back().add("and " + std::to_string(rest) + " more");
    }
    if (!document.sources.empty()) {
        DataTable sources{"", {titled("key"), titled("source")}, {}};
        for (const Reference* r : document.sources) sources.add_words({r->key, r->full()});
        page.sections.push_back({"Sources", {}, {}, {}, {}});
        page.sections.back().blocks.push_back({PageBlock::Kind::table, {}, {}, sources});
    }
    page.foot = how_to_cite(document.data_version) + (document.date.empty() ? "" : ", " + document.date);
    return page;
}

} // namespace pourbook

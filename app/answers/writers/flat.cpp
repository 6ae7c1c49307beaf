#include "answers/writers/flat.hpp"

#include "answers/parts/citation.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/number_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

bool is_marked(const DataTable& table, std::size_t column) {
    return std::any_of(table.rows.begin(), table.rows.end(),
                       [column](const auto& row) { return !row[column].mark.empty(); });
}

DataColumn flat_column(const std::string& title, const std::string& unit = "") {
    return {title, title, unit};
}

DataCell flat_cell(const std::string& text, double number = no_number) {
    DataCell cell = DataCell::words(text);
    cell.number = number;
    return cell;
}

/// A figure with the digits that people read: more would say what nobody knows.
double as_read(const std::string& text, double number) {
    std::string_view rest = text;
    double read = number;
    return take_decimal(rest, read) && rest.empty() ? read : number;
}

void add_columns(DataTable& out, const DataColumn& c, bool marked) {
    out.columns.push_back(flat_column(c.title, c.unit));
    if (!c.traced) return;
    if (marked) out.columns.push_back(flat_column(c.title + ", mark"));
    out.columns.push_back(flat_column(c.title + ", standard uncertainty", c.unit));
    for (const char* what : {", how known", ", condition", ", sources", ", reason"})
        out.columns.push_back(flat_column(c.title + what));
}

void add_cells(std::vector<DataCell>& row, const DataColumn& c, const DataCell& cell, bool marked) {
    const bool missing = !cell.reason.empty();
    row.push_back(flat_cell(missing                          ? ""
                            : cell.text.empty() && !c.traced ? joined(cell.sources, " ")
                                                             : cell.text,
                            as_read(cell.text, cell.number)));
    if (!c.traced) return;
    if (marked) row.push_back(flat_cell(cell.mark));
    row.push_back(flat_cell("", as_read(significant(cell.uncertainty, 2), cell.uncertainty)));
    row.push_back(flat_cell(cell.how_known));
    row.push_back(flat_cell(cell.condition));
    row.push_back(flat_cell(joined(cell.sources, " ")));
    row.push_back(flat_cell(cell.reason));
}

std::size_t place_of(DataTable& out, const DataColumn& column) {
    const auto found = std::find_if(out.columns.begin(), out.columns.end(), [&](const DataColumn& c) {
        return c.title == column.title && c.unit == column.unit;
    });
    if (found != out.columns.end()) return static_cast<std::size_t>(found - out.columns.begin());
    out.columns.push_back(column);
    return out.columns.size() - 1;
}

std::string references(const Document& document, const std::vector<DataCell>& row) {
    std::vector<std::string> out;
    for (const Reference* r : document.sources)
        if (std::any_of(row.begin(), row.end(), [&](const DataCell& c) {
                return std::find(c.sources.begin(), c.sources.end(), r->key) != c.sources.end();
            }))
            out.push_back(r->key + ": " + r->full());
    return joined(out, " | ");
}

} // namespace

DataTable flat(const DataTable& table) {
    DataTable out;
    std::vector<std::size_t> columns; // those of a file
    std::vector<bool> marked;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (!(table.columns[i].shown_in & in::file)) continue;
        columns.push_back(i);
        marked.push_back(is_marked(table, i));
        add_columns(out, table.columns[i], marked.back());
    }
    for (const auto& cells : table.rows) {
        out.rows.emplace_back();
        for (std::size_t k = 0; k < columns.size(); ++k)
            add_cells(out.rows.back(), table.columns[columns[k]], cells[columns[k]], marked[k]);
    }
    return out;
}

DataTable flat(const Document& document) {
    DataTable out;
    const std::vector<const DataTable*> tables = document.tables(in::file);
    if (tables.size() > 1) out.columns.push_back(flat_column("part"));
    for (const DataTable* part : tables) {
        const DataTable one = flat(*part);
        std::vector<std::size_t> places;
        for (const DataColumn& c : one.columns) places.push_back(place_of(out, c));
        for (const auto& cells : one.rows) {
            out.rows.emplace_back(out.columns.size());
            if (tables.size() > 1) out.rows.back()[0].text = part->title;
            for (std::size_t i = 0; i < cells.size(); ++i) out.rows.back()[places[i]] = cells[i];
        }
    }
    std::vector<std::pair<std::string, std::string>> ends; // the same in every row
    for (const DataFigure& f : document.figures)
        if (f.shown_in & in::file) ends.emplace_back(f.id, f.words());
    ends.emplace_back("data version", document.data_version);
    ends.emplace_back("cite as", how_to_cite(document.data_version));
    ends.emplace_back("date", document.date);
    std::size_t row = 0;
    for (const DataTable* part : tables)
        for (const auto& cells : part->rows) {
            out.rows[row].resize(out.columns.size());
            for (const auto& [name, words] : ends) out.rows[row].push_back(flat_cell(words));
            out.rows[row++].push_back(flat_cell(references(document, cells)));
        }
    for (const auto& [name, words] : ends) out.columns.push_back(flat_column(name));
    out.columns.push_back(flat_column("references"));
    return out;
}

} // namespace pourbook

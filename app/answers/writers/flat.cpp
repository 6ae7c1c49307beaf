#include "answers/writers/flat.hpp"

#include "core/quantity/format.hpp"
#include <algorithm>

namespace pourbook {
namespace {

void add_columns(Flat& out, const DataColumn& c) {
    out.columns.push_back({c.title, c.unit});
    if (!c.traced) return;
    out.columns.push_back({c.title + ", standard uncertainty", c.unit});
    for (const char* what : {", how known", ", condition", ", sources", ", reason"})
        out.columns.push_back({c.title + what, ""});
}

void add_cells(std::vector<FlatCell>& row, const DataColumn& c, const DataCell& cell) {
    const bool missing = !cell.reason.empty();
    row.push_back({missing ? "" : cell.text.empty() && !c.traced ? joined(cell.sources, " ") : cell.text, cell.number});
    if (!c.traced) return;
    row.push_back({"", cell.uncertainty});
    row.push_back({cell.how_known, no_number});
    row.push_back({cell.condition, no_number});
    row.push_back({joined(cell.sources, " "), no_number});
    row.push_back({cell.reason, no_number});
}

std::size_t place_of(Flat& out, const FlatColumn& column) {
    const auto found = std::find(out.columns.begin(), out.columns.end(), column);
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

Flat flat(const DataTable& table) {
    Flat out;
    for (const DataColumn& c : table.columns) add_columns(out, c);
    for (const auto& cells : table.rows) {
        out.rows.emplace_back();
        for (std::size_t i = 0; i < cells.size(); ++i) add_cells(out.rows.back(), table.columns[i], cells[i]);
    }
    return out;
}

Flat flat(const Document& document) {
    Flat out;
    if (document.parts.size() > 1) out.columns.push_back({"part", ""});
    for (const DataTable& part : document.parts) {
        const Flat one = flat(part);
        std::vector<std::size_t> places;
        for (const FlatColumn& c : one.columns) places.push_back(place_of(out, c));
        for (const auto& cells : one.rows) {
            out.rows.emplace_back(out.columns.size());
            if (document.parts.size() > 1) out.rows.back()[0].text = part.title;
            for (std::size_t i = 0; i < cells.size(); ++i) out.rows.back()[places[i]] = cells[i];
        }
    }
    std::vector<std::vector<FlatCell>> ends;
    for (const DataTable& part : document.parts)
        for (const auto& row : part.rows) {
            ends.emplace_back();
            for (const auto& [name, value] : document.conditions) ends.back().push_back({value, no_number});
            for (const std::string& text : {document.data_version, document.date, references(document, row)})
                ends.back().push_back({text, no_number});
        }
    for (std::size_t i = 0; i < out.rows.size(); ++i) {
        out.rows[i].resize(out.columns.size());
        out.rows[i].insert(out.rows[i].end(), ends[i].begin(), ends[i].end());
    }
    for (const auto& [name, value] : document.conditions) out.columns.push_back({name, ""});
    for (const char* name : {"data version", "date", "references"}) out.columns.push_back({name, ""});
    return out;
}

} // namespace pourbook

#include "answers/writers/writers.hpp"

#include "answers/parts/citation.hpp"
#include "answers/parts/json_parts.hpp"

#include <cmath>

namespace pourbook {
namespace {

Json text_or_null(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

Json value_of(const DataCell& c) {
    return std::isfinite(c.number) ? Json(c.number) : text_or_null(c.reason.empty() ? c.text : "");
}

Json cell_of(const DataColumn& column, const DataCell& c) {
    if (!column.traced && c.text.empty() && !c.sources.empty()) return c.sources;
    if (!column.traced) return value_of(c);
    if (!c.reason.empty()) return {{"value", nullptr}, {"reason", c.reason}};
    Json out = {{"value", value_of(c)},
                {"standard_uncertainty", json_number(c.uncertainty)},
                {"basis", text_or_null(c.basis)},
                {"how_known", text_or_null(c.how_known)},
                {"condition", text_or_null(c.condition)},
                {"sources", c.sources}};
    if (!c.mark.empty()) out["mark"] = c.mark;
    return out;
}

Json part_of(const DataTable& table) {
    Json columns = Json::array(), rows = Json::array();
    for (const DataColumn& c : table.columns)
        if (c.shown_in & in::file)
            columns.push_back({{"id", c.id}, {"title", c.title}, {"unit", text_or_null(c.unit)}});
    for (const auto& cells : table.rows) {
        Json row = Json::object();
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (table.columns[i].shown_in & in::file) row[table.columns[i].id] = cell_of(table.columns[i], cells[i]);
        rows.push_back(row);
    }
    return {{"title", table.title}, {"columns", columns}, {"rows", rows}};
}

} // namespace

std::string json_of(const Document& document) {
    Json conditions = Json::object(), notes = Json::array(), parts = Json::array(), sources = Json::array();
    for (const DataFigure& f : document.figures)
        if (f.shown_in & in::file) conditions[f.id] = f.words();
    for (const Sentence& note : document.notes)
        if (note.shown_in & in::file) notes.push_back(note.text);
    for (const DataTable* part : document.tables(in::file)) parts.push_back(part_of(*part));
    for (const Reference* r : document.sources) sources.push_back({{"key", r->key}, {"reference", r->full()}});
    return json_text({{"title", document.title},
                      {"conditions", conditions},
                      {"notes", notes},
                      {"data_version", document.data_version},
                      {"cite_as", how_to_cite(document.data_version)},
                      {"date", document.date},
                      {"parts", parts},
                      {"sources", sources}});
}

} // namespace pourbook

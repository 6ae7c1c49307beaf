#include "answers/writers/writers.hpp"

#include "answers/parts/citation.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string read_by_people(const DataCell& cell) {
    if (!cell.reason.empty()) return "no value: " + cell.reason;
    std::string out = cell.text;
    if (cell.uncertainty > 0) out += " ± " + significant(cell.uncertainty, 2);
    if (!cell.basis.empty() && cell.basis != "cited")
        out += " (" + cell.basis + ")";
    else if (!cell.how_known.empty() && cell.how_known != "read")
        out += " (" + cell.how_known + ")";
    if (!cell.mark.empty()) out += " (" + cell.mark + ")";
    if (!cell.sources.empty()) out += (out.empty() ? "[" : " [") + joined(cell.sources) + "]";
    return out;
}

Table printed(const DataTable& data) {
    Table out;
    for (const DataColumn& c : data.columns)
        if (c.shown_in & in::file)
            out.columns.push_back({c.title + (c.unit.empty() ? "" : ", " + c.unit), c.number && !c.traced});
    for (const auto& cells : data.rows) {
        out.rows.emplace_back();
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (data.columns[i].shown_in & in::file) out.rows.back().push_back(read_by_people(cells[i]));
    }
    return out;
}

} // namespace

Page page_of(const Document& document) {
    Page page;
    page.title = document.title;
    std::string conditions;
    for (const DataFigure& f : document.figures)
        if (f.shown_in & in::file) conditions += (conditions.empty() ? "" : " · ") + f.id + ": " + f.words();
    page.subtitle.push_back(conditions);
    for (const Sentence& note : document.notes)
        if (note.shown_in & in::file) page.subtitle.push_back(note.text);
    for (const DataTable* part : document.tables(in::file)) {
        page.sections.push_back({part->title, {}, {}, {}, {}});
        page.sections.back().blocks.push_back({PageBlock::Kind::table, {}, {}, printed(*part)});
    }
    if (!document.sources.empty()) {
        Table sources{{{"key"}, {"source"}}, {}};
        for (const Reference* r : document.sources) sources.rows.push_back({r->key, r->full()});
        page.sections.push_back({"Sources", {}, {}, {}, {}});
        page.sections.back().blocks.push_back({PageBlock::Kind::table, {}, {}, sources});
    }
    page.foot = how_to_cite(document.data_version) + (document.date.empty() ? "" : ", " + document.date);
    return page;
}

} // namespace pourbook

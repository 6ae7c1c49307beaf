#include "gui/state/pasted.hpp"

#include "questions/metals/find_words.hpp"

#include <algorithm>
#include <map>
#include <sstream>

namespace pourbook {
namespace {

using Cells = std::vector<std::string>;

std::string bare(std::string cell) {
    while (!cell.empty() && (cell.back() == '\r' || cell.back() == ' ')) cell.pop_back();
    const std::size_t first = cell.find_first_not_of(' ');
    cell = first == std::string::npos ? "" : cell.substr(first);
    if (cell.size() > 1 && cell.front() == '"' && cell.back() == '"') cell = cell.substr(1, cell.size() - 2);
    return cell;
}

/// A spreadsheet copies with tabs between cells; a list typed by hand may have semicolons.
Cells cells_of(const std::string& line) {
    const char between = line.find('\t') != std::string::npos ? '\t' : ';';
    Cells out;
    std::istringstream in(line);
    for (std::string cell; std::getline(in, cell, between);) out.push_back(bare(cell));
    return out;
}

/// The field of that name or of one of its other names; its place, or none.
std::size_t field_named(const Kind& kind, const std::string& name) {
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        const Field& f = kind.fields[i];
        const auto same = [&](const std::string& other) { return lower_case(other) == lower_case(name); };
        if (same(f.name) || std::any_of(f.other_names.begin(), f.other_names.end(), same)) return i;
    }
    return kind.fields.size();
}

/// Columns as the head names them; empty where the first row is no head.
std::vector<std::size_t> columns_of_head(const Kind& kind, const Cells& head) {
    std::vector<std::size_t> columns;
    std::size_t known = 0;
    for (const std::string& name : head) {
        columns.push_back(field_named(kind, name));
        known += columns.back() < kind.fields.size() ? 1 : 0;
    }
    return known * 2 > head.size() ? columns : std::vector<std::size_t>();
}

} // namespace

const std::vector<std::string>& grid_fields(const Kind& kind) {
    static const std::map<std::string, std::vector<std::string>> grids = {
        {"stock", {"metal", "mass", "price", "bought", "seller", "condition"}},
        {"price", {"metal", "price", "date", "seller", "form"}},
        {"rate", {"currency", "usd", "date", "source"}},
        {"crucible", {"name", "material", "volume"}},
        {"mould", {"name", "process", "material", "maximum"}}};
    static const std::vector<std::string> none;
    const auto at = grids.find(kind.name);
    return at == grids.end() ? none : at->second;
}

Result<std::vector<Entry>> entries_from_paste(const Kind& kind, const std::string& text) {
    std::vector<std::size_t> columns;
    for (const std::string& name : grid_fields(kind)) columns.push_back(kind.at(name));
    std::vector<Entry> out;
    std::istringstream in(text);
    bool first = true;
    int row = 0;
    for (std::string line; std::getline(in, line);) {
        ++row;
        const Cells cells = cells_of(line);
        if (std::all_of(cells.begin(), cells.end(), [](const std::string& c) { return c.empty(); })) continue;
        if (std::exchange(first, false))
            if (const auto named = columns_of_head(kind, cells); !named.empty()) {
                columns = named;
                continue;
            }
        if (cells.size() > columns.size())
            return Problem{Problem::Kind::unreadable,
                           "row " + std::to_string(row) + " has " + std::to_string(cells.size()) + " cells, the grid " +
                               std::to_string(columns.size()) + ": copy a head with the names of the columns too",
                           0};
        Entry entry = form_entry(kind);
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (columns[i] < kind.fields.size()) entry.values[columns[i]] = cells[i];
        out.push_back(std::move(entry));
    }
    if (out.empty()) return Problem{Problem::Kind::unreadable, "the clipboard holds no rows: copy some cells first", 0};
    return out;
}

} // namespace pourbook

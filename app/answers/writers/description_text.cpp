// For the box below a video: plain proportional text, so a line a metal in words in place of columns; sources numbered.
#include "answers/writers/writers.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr std::size_t description_limit =
    4900; // characters; video sites cut at some 5,000 (common practice, no source)

/// Sources in the order in which they are first named.
class NumberedSources {
public:
    explicit NumberedSources(const Document& document) : document_(document) {}

    /// " [1][3]" for those that decided.
    std::string of(const DataCell& cell) {
        std::string out;
        const std::size_t shown = cell.deciding ? cell.deciding : std::min<std::size_t>(cell.sources.size(), 1);
        for (std::size_t i = 0; i < std::min(shown, cell.sources.size()); ++i)
            if (const std::size_t n = number(cell.sources[i])) out += "[" + std::to_string(n) + "]";
        return out.empty() ? "" : " " + out;
    }
    bool empty() const { return named_.empty(); }
    void name_all() { named_.assign(document_.sources.begin(), document_.sources.end()); }
    std::string list() const {
        std::string out;
        for (std::size_t i = 0; i < named_.size(); ++i)
            out += "[" + std::to_string(i + 1) + "] " + in_one_line(*named_[i]) + "\n";
        return out;
    }

private:
    static std::string in_one_line(const Reference& r) {
        std::string out = r.authors;
        for (const std::string& part : {r.year, r.title, r.doi.empty() ? r.address : "doi " + r.doi})
            if (!part.empty()) out += (out.empty() ? "" : ", ") + part;
        return out;
    }
    std::size_t number(const std::string& key) {
        const auto known =
            std::find_if(named_.begin(), named_.end(), [&](const Reference* r) { return r->key == key; });
        if (known != named_.end()) return static_cast<std::size_t>(known - named_.begin()) + 1;
        const auto found =
            std::find_if(document_.sources.begin(), document_.sources.end(), [&](auto* r) { return r->key == key; });
        if (found == document_.sources.end()) return 0;
        named_.push_back(*found);
        return named_.size();
    }

    const Document& document_;
    std::vector<const Reference*> named_;
};

std::size_t column_named(const DataTable& table, const std::string& id) {
    const auto it = std::find_if(table.columns.begin(), table.columns.end(), [&](auto& c) { return c.id == id; });
    return static_cast<std::size_t>(it - table.columns.begin());
}

bool is_end(const DataTable& table, std::size_t column, const char* which) {
    return column < table.columns.size() && table.columns[column].id.find(which) != std::string::npos;
}

bool has_traced(const DataTable& table) {
    return std::any_of(table.columns.begin(), table.columns.end(), [](auto& c) { return c.traced; });
}

/// Figures that people read: traced ones with their uncertainty, others with their interval; where none is traced, all.
bool told(const DataTable& table, std::size_t column) {
    const DataColumn& c = table.columns[column];
    if (!(c.shown_in & in::file) || is_end(table, column, "low90") || is_end(table, column, "high90")) return false;
    return c.traced || (c.number && (is_end(table, column + 1, "low90") || !has_traced(table)));
}

std::string without(std::string text, const std::string& part) {
    if (const std::size_t at = text.find(part); at != std::string::npos) text.erase(at, part.size());
    return text;
}

std::string figure_of(const DataTable& table, const std::vector<DataCell>& row, std::size_t i,
                      NumberedSources& sources) {
    if (row[i].text.empty()) return {};
    std::string out = row[i].text;
    if (is_end(table, i + 1, "low90") && is_end(table, i + 2, "high90") && !row[i + 1].text.empty())
        out += " (" + row[i + 1].text + " to " + row[i + 2].text + ")";
    else if (row[i].uncertainty > 0)
        out += " ± " + significant(normal_90 * row[i].uncertainty, 2);
    const std::size_t unit = column_named(table, "unit");
    const std::string& in = unit < row.size() ? row[unit].text : table.columns[i].unit;
    return out + (in.empty() ? "" : " " + in) + sources.of(row[i]);
}

/// Empty where nothing of it is known.
std::string line_of_row(const DataTable& table, const std::vector<DataCell>& row, NumberedSources& sources) {
    if (table.look == TableLook::pairs) return row[0].text + ": " + row[1].text + sources.of(row[1]) + "\n";
    const auto text_at = [&](const char* id) {
        const std::size_t at = column_named(table, id);
        return at < row.size() ? row[at].text : std::string();
    };
    const std::string rank = text_at("rank"), mark = text_at("mark");
    std::string name = text_at("name");
    if (name.empty()) name = text_at("label");
    if (name.empty()) name = row.front().text;
    const std::string label = (rank.empty() ? "" : rank + ". ") + name + ": ";
    std::string figures;
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::string figure = told(table, i) ? figure_of(table, row, i, sources) : std::string();
        if (figure.empty()) continue;
        const std::string& title = table.columns[i].title;
        const std::string shown = title == "value" || title == "median" ? "" : without(title, ", median") + " ";
        figures += (figures.empty() ? "" : "; ") + shown + figure;
    }
    return figures.empty() ? "" : label + figures + (mark.empty() ? "" : " (" + mark + ")") + "\n";
}

/// Rows that their first cell names, as in two set-ups side by side.
bool has_named_rows(const DataTable& table) {
    return table.look == TableLook::pairs || table.columns.front().title.empty();
}

/// The tables of metals' figures; where there are none, the answer's own.
std::vector<const DataTable*> told_tables(const Document& document) {
    std::vector<const DataTable*> out;
    for (const DataTable* table : document.tables(in::file))
        if (column_named(*table, "metal") < table->columns.size() && has_traced(*table)) out.push_back(table);
    if (out.empty())
        for (const DataTable* table : document.tables(in::file))
            if (has_named_rows(*table)) out.push_back(table);
    if (out.empty() && !document.tables(in::file).empty()) out.push_back(document.tables(in::file).front());
    return out;
}

std::string with_rows(const Document& document, std::size_t most) {
    std::string out = document.title + "\n\n";
    for (const Sentence& s : document.notes)
        if (s.shown_in & in::file) out += s.text + "\n";
    out += "± and ranges are 90 % intervals.\n";
    NumberedSources sources(document);
    for (const DataTable* table : told_tables(document)) {
        if (table->rows.empty()) continue;
        out += "\n";
        const std::size_t shown = std::min(most, table->rows.size());
        for (std::size_t i = 0; i < shown; ++i) out += line_of_row(*table, table->rows[i], sources);
        if (shown < table->rows.size()) out += "and " + std::to_string(table->rows.size() - shown) + " more\n";
    }
    if (sources.empty()) sources.name_all(); // no figure says which is its own
    const std::string list = sources.list();
    if (!list.empty()) out += "\nSources\n" + list;
    return out + "\nPourbook, data version " + document.data_version + ", " + document.date + "\n";
}

} // namespace

std::string description_text(const Document& document) {
    std::size_t most = 1;
    for (const DataTable& table : document.parts) most = std::max(most, table.rows.size());
    std::string out = with_rows(document, most);
    while (out.size() > description_limit && most > 1) {
        most = std::max<std::size_t>(1, most * description_limit / out.size() - 1);
        out = with_rows(document, most);
    }
    return out;
}

} // namespace pourbook

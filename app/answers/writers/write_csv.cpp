#include "answers/writers/writers.hpp"

#include "answers/writers/csv_cell.hpp"
#include "answers/writers/flat.hpp"

#include <cmath>

namespace pourbook {
namespace {

std::string one_line(std::string text) {
    for (char& c : text)
        if (c == '\t' || c == '\n' || c == '\r') c = ' ';
    return text;
}

std::string csv_field(const std::string& text) {
    return csv_cell(text);
}

std::string tab_field(const std::string& text) {
    return defused(one_line(text));
}

std::string lines_of(const DataTable& table, std::string (*field)(const std::string&), const char* between,
                     const char* end) {
    std::string out;
    const auto add = [&](std::size_t i, const std::string& text) { out += (i ? between : "") + text; };
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const DataColumn& c = table.columns[i];
        add(i, field(c.title + (c.unit.empty() ? "" : " (" + c.unit + ")")));
    }
    out += end;
    for (const auto& row : table.rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            add(i, std::isfinite(row[i].number) ? exact(row[i].number) : field(row[i].text));
        out += end;
    }
    return out;
}

} // namespace

std::string csv_of(const Document& document) {
    return lines_of(flat(document), csv_field, ",", "\r\n");
}

std::string tab_separated(const DataTable& table) {
    return lines_of(flat(table), tab_field, "\t", "\n");
}

} // namespace pourbook

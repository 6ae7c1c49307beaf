#include "report/tables/writers.hpp"

#include "report/tables/flat.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// A text that a spreadsheet would run as a formula gets an apostrophe in front; one that already has apostrophes
/// before such a sign gets one more, so that a reader who takes one away has the text again.
std::string defused(const std::string& text) {
    const std::size_t sign = text.find_first_not_of('\'');
    const bool runs = sign != std::string::npos && std::string("=+-@\t\r").find(text[sign]) != std::string::npos;
    return runs ? "'" + text : text;
}

std::string quoted(const std::string& text) {
    const bool plain = text.find_first_of(",\"\r\n") == std::string::npos &&
                       (text.empty() || (text.front() != ' ' && text.back() != ' '));
    if (plain) return text;
    std::string out = "\"";
    for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
    return out + "\"";
}

std::string one_line(std::string text) {
    for (char& c : text)
        if (c == '\t' || c == '\n' || c == '\r') c = ' ';
    return text;
}

std::string csv_field(const std::string& text) {
    return quoted(defused(text));
}

std::string tab_field(const std::string& text) {
    return defused(one_line(text));
}

std::string lines_of(const Flat& table, std::string (*field)(const std::string&), const char* between,
                     const char* end) {
    std::string out;
    const auto add = [&](std::size_t i, const std::string& text) { out += (i ? between : "") + text; };
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const FlatColumn& c = table.columns[i];
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

#include "answers/writers/writers.hpp"

#include "answers/parts/table.hpp"

namespace pourbook {
namespace {

/// A line that fits keeps the blanks inside it.
std::string fitted(const std::string& line, std::size_t width, const std::string& indent) {
    return characters(line) <= width ? line + "\n" : wrapped(line, width, indent);
}

std::string lines_of_rows(const DataTable& table) {
    std::string out;
    for (std::size_t r = 0; r < table.told(); ++r) {
        const auto& row = table.rows[r];
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i)
            if (table.columns[i].shown_in & in::text) line += (line.empty() ? "  " : ": ") + row[i].text;
        out += fitted(line, page_width, "      ");
    }
    return out;
}

std::string pairs_of(const DataTable& table) {
    std::size_t widest = 0;
    for (const auto& row : table.rows) widest = std::max(widest, characters(row[0].text));
    std::string out;
    for (const auto& row : table.rows)
        out += row[0].text + std::string(widest + 2 - characters(row[0].text), ' ') +
               fitted(row[1].text, page_width - widest - 2, std::string(widest + 2, ' '));
    return out;
}

std::string sheet_of(const DataTable& table) {
    std::string out;
    for (const auto& row : table.rows) out += row[0].text + "\n";
    return out;
}

std::string body_of(const DataTable& table) {
    switch (table.look) {
    case TableLook::lines:
        return lines_of_rows(table);
    case TableLook::pairs:
        return pairs_of(table);
    case TableLook::sheet:
        return sheet_of(table);
    default:
        return as_text(table);
    }
}

std::string rest_of(const DataTable& table) {
    const std::size_t rest = table.rows.size() - table.told();
    return rest ? "  and " + std::to_string(rest) + " more\n" : "";
}

/// The first table is the answer itself.
std::string title_of(const DataTable& table, bool first) {
    return first || table.look == TableLook::pairs || table.title.empty() ? "" : table.title + "\n";
}

} // namespace

std::string answer_text(const Document& document) {
    std::string out;
    const auto say_after = [&](std::size_t tables) {
        for (const Sentence& s : document.notes)
            if (s.after == tables && s.shown_in & in::text)
                out += (s.apart ? "\n" : "") + wrapped(s.text, page_width, s.indent);
    };
    say_after(0);
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        const DataTable& part = document.parts[i];
        if (part.shown_in & in::text && !part.rows.empty())
            out += (out.empty() ? "" : "\n") + title_of(part, i == 0) + body_of(part) + rest_of(part);
        say_after(i + 1);
    }
    return out;
}

} // namespace pourbook

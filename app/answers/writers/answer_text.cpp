#include "answers/writers/writers.hpp"

#include "answers/parts/table.hpp"

namespace pourbook {
namespace {

std::string lines_of_rows(const DataTable& table) {
    std::string out;
    for (const auto& row : table.rows) {
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i)
            if (table.columns[i].shown_in & in::text) line += (line.empty() ? "  " : ": ") + row[i].text;
        out += wrapped(line, page_width, "      ");
    }
    return out;
}

std::string columns_of(const DataTable& table) {
    Table plain;
    for (const DataColumn& c : table.columns)
        if (c.shown_in & in::text) plain.columns.push_back({c.title + (c.unit.empty() ? "" : ", " + c.unit), c.number});
    for (const auto& cells : table.rows) {
        auto& row = plain.rows.emplace_back();
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (table.columns[i].shown_in & in::text)
                row.push_back(cells[i].reason.empty() ? cells[i].text : "no value");
    }
    return as_text(plain);
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
            out += (out.empty() ? "" : "\n") + (i ? part.title + "\n" : "") +
                   (part.as_lines ? lines_of_rows(part) : columns_of(part));
        say_after(i + 1);
    }
    return out;
}

} // namespace pourbook

#include "answers/parts/table.hpp"

#include <algorithm>
#include <sstream>

namespace pourbook {
namespace {

std::size_t characters(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string padded(const std::string& text, std::size_t width, bool right) {
    const std::string blanks(width - std::min(width, characters(text)), ' ');
    return right ? blanks + text : text + blanks;
}

} // namespace

std::string as_text(const Table& table) {
    std::vector<std::size_t> widths;
    for (const auto& column : table.columns) widths.push_back(characters(column.title));
    for (const auto& row : table.rows)
        for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], characters(row[i]));
    std::ostringstream out;
    const auto line = [&](const std::vector<std::string>& cells) {
        std::string text;
        for (std::size_t i = 0; i < cells.size(); ++i)
            text += (i ? "  " : "") + padded(cells[i], widths[i], table.columns[i].right);
        out << text.substr(0, text.find_last_not_of(' ') + 1) << "\n";
    };
    std::vector<std::string> titles;
    for (const auto& column : table.columns) titles.push_back(column.title);
    line(titles);
    for (const auto& row : table.rows) line(row);
    return out.str();
}

std::string wrapped(const std::string& text, std::size_t width, const std::string& indent) {
    std::istringstream words(text);
    std::string out, line = text.substr(0, std::min(text.size(), text.find_first_not_of(' ')));
    bool empty = true;
    for (std::string word; words >> word; empty = false) {
        if (!empty && characters(line) + 1 + characters(word) > width) {
            out += line + "\n";
            line = indent;
            empty = true;
        }
        line += (empty ? "" : " ") + word;
    }
    return out + line + "\n";
}

} // namespace pourbook

// A plain table that every writer takes.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace pourbook {

struct Table {
    struct Column {
        std::string title;
        bool right = false; // numbers stand to the right
    };
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows;
};

/// Columns in line, two blanks apart, for a terminal; widths count characters, not bytes.
std::string as_text(const Table& table);

constexpr std::size_t page_width = 110; // characters in a line of text

/// Lines of at most `width` characters, later ones indented; blanks at the front are kept.
std::string wrapped(const std::string& text, std::size_t width, const std::string& indent);

} // namespace pourbook

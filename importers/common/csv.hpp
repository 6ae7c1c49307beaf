// Comma separated values, read row by row: RFC 4180 with what spreadsheets make of it. Separator , ; tab or | (found
// from the first rows, or named in a first line "sep=;"), UTF-8 with or without its mark, quotes, lines ended by LF,
// CRLF or CR. Bounded: a cell of at most 1 MB, at most 1000 cells a row.
#pragma once

#include "importers/common/located_json.hpp"

#include <istream>
#include <string>
#include <vector>

namespace pourbook {

struct CsvRow {
    int line = 0; // where it starts
    std::vector<std::string> cells;
};

class CsvReader {
public:
    /// Throws InputError: no text, or text that is not UTF-8.
    CsvReader(std::istream& in, std::string file_name);

    char separator() const { return separator_; }
    /// False at the end. Empty lines are passed over. Throws InputError: a quote that is never closed, bounds.
    bool next(CsvRow& row);
    std::size_t bytes_read() const { return bytes_before_ + at_; }

private:
    bool fill();
    int peek();
    void take() { ++at_; }
    void find_separator();
    void quoted_cell(std::string& cell);
    void plain_cell(std::string& cell);
    bool end_of_row();
    void add(std::string& cell, char c) const;

    std::istream& in_;
    std::string file_, block_;
    std::size_t at_ = 0, bytes_before_ = 0;
    int line_ = 1;
    char separator_ = ',';
};

} // namespace pourbook

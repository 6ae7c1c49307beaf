#include "importers/common/csv.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr std::size_t block_bytes = 1 << 16, longest_cell = 1 << 20, most_cells = 1000;
constexpr std::array separators = {',', ';', '\t', '|'};

/// How often each row of the block's beginning has the separator outside quotes.
std::vector<std::size_t> counts_in(const std::string& block, char separator) {
    constexpr std::size_t looked_at = 20;
    std::vector<std::size_t> counts = {0};
    bool quoted = false;
    for (const char c : block) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == separator) ++counts.back();
        if (c == '\n') {
            if (counts.size() == looked_at) break;
            counts.push_back(0);
        }
    }
    return counts;
}

/// Rows that have as many separators as the header; none where the header has none.
std::size_t agreement(const std::string& block, char separator) {
    const std::vector<std::size_t> counts = counts_in(block, separator);
    if (counts.front() == 0) return 0;
    return static_cast<std::size_t>(std::count(counts.begin(), counts.end(), counts.front())) * 1000 + counts.front();
}

} // namespace

CsvReader::CsvReader(std::istream& in, std::string file_name) : in_(in), file_(std::move(file_name)) {
    fill();
    if (block_.starts_with("\xFF\xFE") || block_.starts_with("\xFE\xFF"))
        throw InputError(file_, 1, "", "this is UTF-16: save it as UTF-8");
    if (block_.starts_with("\xEF\xBB\xBF")) at_ = 3;
    find_separator();
}

bool CsvReader::fill() {
    bytes_before_ += block_.size();
    block_.resize(block_bytes);
    in_.read(block_.data(), static_cast<std::streamsize>(block_bytes));
    block_.resize(static_cast<std::size_t>(in_.gcount()));
    at_ = 0;
    if (in_.bad()) throw InputError(file_, line_, "", "the file can't be read any further");
    if (block_.find('\0') != std::string::npos)
        throw InputError(file_, line_, "", "this is no text file (a zero byte stands in it): save it as CSV, UTF-8");
    return !block_.empty();
}

int CsvReader::peek() {
    if (at_ == block_.size() && !fill()) return -1;
    return static_cast<unsigned char>(block_[at_]);
}

void CsvReader::find_separator() {
    if (block_.compare(at_, 4, "sep=") == 0 && at_ + 4 < block_.size()) {
        separator_ = block_[at_ + 4];
        at_ += 5;
        while (peek() == '\r' || peek() == '\n') {
            if (peek() == '\n') ++line_;
            take();
        }
        return;
    }
    std::size_t best = 0;
    for (const char candidate : separators)
        if (const std::size_t score = agreement(block_, candidate); score > best) {
            best = score;
            separator_ = candidate;
        }
}

void CsvReader::add(std::string& cell, char c) const {
    if (cell.size() >= longest_cell) throw InputError(file_, line_, "", "a cell is longer than 1 MB: a quote missing?");
    cell += c;
}

void CsvReader::quoted_cell(std::string& cell) {
    const int opened = line_;
    take();
    for (;;) {
        const int c = peek();
        if (c < 0) throw InputError(file_, opened, "", "a quote is opened here and never closed: close it");
        take();
        if (c == '\n') ++line_;
        if (c != '"') {
            add(cell, static_cast<char>(c));
            continue;
        }
        if (peek() != '"') return;
        take();
        add(cell, '"');
    }
}

void CsvReader::plain_cell(std::string& cell) {
    for (int c = peek(); c >= 0 && c != separator_ && c != '\n' && c != '\r'; c = peek()) {
        add(cell, static_cast<char>(c));
        take();
    }
}

/// Passes over the end of a line; false where the row goes on.
bool CsvReader::end_of_row() {
    if (peek() == '\r') {
        take();
        if (peek() == '\n') take();
    } else if (peek() == '\n') {
        take();
    } else {
        return peek() < 0;
    }
    ++line_;
    return true;
}

bool CsvReader::next(CsvRow& row) {
    for (;;) {
        if (peek() < 0) return false;
        row.line = line_;
        std::size_t used = 0; // cells keep their storage from row to row
        do {
            if (used == most_cells) throw InputError(file_, line_, "", "more than 1000 cells in a row");
            if (used == row.cells.size()) row.cells.emplace_back();
            std::string& cell = row.cells[used++];
            cell.clear();
            if (peek() == '"') quoted_cell(cell);
            plain_cell(cell);
            if (peek() == separator_ && separator_ >= 0) {
                take();
                continue;
            }
            if (end_of_row()) break;
        } while (true);
        row.cells.resize(used);
        if (used > 1 || !row.cells.front().empty()) return true;
    }
}

} // namespace pourbook

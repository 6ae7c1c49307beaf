// The one table: cells that know their figure, uncertainty, condition and sources, in columns that know their unit and
// where they are shown. Every writer takes it; and how a table stands on a terminal.
#pragma once

#include "core/materials/catalogue.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace pourbook {

/// Renderings, to be added up.
namespace in {
constexpr unsigned text = 1;    // of a terminal
constexpr unsigned program = 2; // the JSON that a command answers with
constexpr unsigned file = 4;    // what leaves as CSV, XLSX, Markdown, HTML or JSON
constexpr unsigned window = 8;
constexpr unsigned all = text | program | file | window;
} // namespace in

/// What a program reads; nothing: null.
using Value = std::variant<std::monostate, bool, std::int64_t, double, std::string, std::vector<std::string>>;

/// null for what is not finite.
Value number_or_null(double x);
Value number_or_null(const std::optional<double>& x);

struct DataCell {
    std::string text;               // words, or the figure as people read it; empty: nothing is said
    double number = no_number;      // in the column's unit; NaN: words only
    double uncertainty = no_number; // standard, in the same unit; NaN: none
    std::string basis, how_known, condition;
    std::vector<std::string> sources; // keys, those that decided first
    std::size_t deciding = 0;         // how many of the sources decided
    std::string reason;               // why there is no value
    std::string mark;                 // "stale price"
    Value value = {};                 // for programs, where it is neither the number nor the text

    static DataCell words(const std::string& text);
    /// Rounded to 12 figures: more are noise of converting units.
    static DataCell figure(double number, const std::string& text);
    /// Blank for 0: not worked out.
    static DataCell count(std::size_t n);
    /// Words for people, a value for programs.
    static DataCell both(const std::string& text, Value value);
};

struct DataColumn {
    std::string id, title, unit = {};
    bool number = false; // figures, set to the right
    bool traced = false; // each figure has uncertainty, condition and sources of its own
    unsigned shown_in = in::all;
    std::string program_id = {}; // the key for programs where it is not `id`; dots nest: "inputs.density"
};

/// How a table stands on a terminal: in columns below its title, a line a row ("metal: reason") below its title, or
/// names with what is said of them, side by side and without a title; or a sheet, each line as it is written.
enum class TableLook { columns, lines, pairs, sheet };

/// A column of words, or of figures set to the right, that is called as its title says.
DataColumn titled(const std::string& title, bool right = false);

struct DataTable {
    std::string title;
    std::vector<DataColumn> columns;
    std::vector<std::vector<DataCell>> rows;
    unsigned shown_in = in::all;
    std::string id = {}; // the key for programs
    TableLook look = TableLook::columns;
    std::size_t most = 0; // rows that people read, in text and on a page; the rest is counted. 0: all

    /// Of words alone.
    void add_words(const std::vector<std::string>& words);
    std::size_t told() const { return most ? std::min(most, rows.size()) : rows.size(); }
};

/// The shortest digits that read back as the same number, without the machine's language.
std::string exact(double number);

/// Not bytes.
std::size_t characters(const std::string& text);

/// Columns in line, two blanks apart, for a terminal; widths count characters, not bytes.
std::string as_text(const DataTable& table);

constexpr std::size_t page_width = 110; // characters in a line of text

/// Lines of at most `width` characters, later ones indented; blanks at the front are kept.
std::string wrapped(const std::string& text, std::size_t width, const std::string& indent);

} // namespace pourbook

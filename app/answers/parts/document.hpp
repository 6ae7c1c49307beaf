// An answer as one document: what was asked, figures, sentences and tables, each with its unit, uncertainty and
// sources. Every rendering is a writer of it: text for a terminal, JSON for programs, and CSV, XLSX, Markdown, HTML and
// JSON as files; the window's tables are made of the same columns. What is said in some renderings only says so in
// `shown_in`.
#pragma once

#include "core/materials/catalogue.hpp"

#include <cstdint>
#include <string>
#include <utility>
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

struct DataTable {
    std::string title;
    std::vector<DataColumn> columns;
    std::vector<std::vector<DataCell>> rows;
    unsigned shown_in = in::all;
    std::string id = {};   // the key for programs
    bool as_lines = false; // on a terminal a line a row, "metal: reason", below the title
};

/// One figure or word: what was asked, or what came of it.
struct DataFigure {
    std::string id; // dots nest
    DataCell cell;
    unsigned shown_in = in::all;
    std::string unit = {}; // of a traced figure: told with uncertainty, condition and sources

    DataFigure(std::string name, Value what, unsigned where = in::all);
    DataFigure(std::string name, DataCell what, std::string in_unit, unsigned where);
    std::string words() const; // as it stands in a file
};

struct Sentence {
    std::string text;
    unsigned shown_in = in::all;
    std::string indent = {}; // of the lines after the first, on a terminal
    std::size_t after = 0;   // how many tables come before it
    bool apart = false;      // on a terminal a blank line comes before it
    std::string id = {};     // the key for programs; empty: not for them

    Sentence(std::string words) : text(std::move(words)) {}
};

struct Document {
    std::string title;
    std::vector<DataFigure> figures;
    std::vector<Sentence> notes;
    std::vector<DataTable> parts;          // the first is the answer
    std::vector<const Reference*> sources; // of every key in the parts, each once
    std::string data_version, date;

    /// Adds a sentence behind the tables there are; none where the text is empty.
    Sentence* say(const std::string& text, unsigned shown_in = in::all, const std::string& indent = "");
    std::vector<const DataTable*> tables(unsigned place) const;
};

/// Adds a source once; a key nobody knows is passed over.
void add_source(Document& document, const Catalogue& catalogue, const std::string& key);
/// Fills `sources` from the keys in the figures and parts, in the order they appear.
void collect_sources(Document& document, const Catalogue& catalogue);

/// The shortest digits that read back as the same number, without the machine's language.
std::string exact(double number);

} // namespace pourbook

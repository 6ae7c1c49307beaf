// An answer as one document: what was asked, figures, sentences and tables, each with its unit, uncertainty and
// sources. Every rendering is a writer of it: text for a terminal, JSON for programs, and CSV, XLSX, Markdown, HTML and
// JSON as files; the window's tables are made of the same columns. What is said in some renderings only says so in
// `shown_in`.
#pragma once

#include "answers/parts/table.hpp"
#include "core/materials/catalogue.hpp"

#include <string>
#include <utility>
#include <vector>

namespace pourbook {

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
    /// Adds a figure for programs.
    void tell(const std::string& id, Value value);
    /// Adds a table of pairs; `pair` adds to the last of them, and tells programs the value where one is named.
    void add_pairs(const std::string& heading);
    DataCell& pair(const std::string& name, const std::string& words);
    DataCell& pair(const std::string& name, const std::string& words, const std::string& id, Value value);
    /// Adds a table of single lines; none where there are none.
    void add_lines(const std::string& heading, const std::vector<std::string>& lines, unsigned shown_in);
    std::vector<const DataTable*> tables(unsigned place) const;
};

/// Adds a source once; a key nobody knows is passed over.
void add_source(Document& document, const Catalogue& catalogue, const std::string& key);
/// Fills `sources` from the keys in the figures and parts, in the order they appear.
void collect_sources(Document& document, const Catalogue& catalogue);

} // namespace pourbook

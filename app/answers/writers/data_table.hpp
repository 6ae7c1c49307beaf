// A table that leaves the program: figures with their uncertainty, condition and sources, so that it can be quoted and
// read again. Every writer takes this one: CSV, JSON and XLSX give all of it, Markdown, HTML and text what is read.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <utility>
#include <vector>

namespace pourbook {

struct DataCell {
    std::string text;               // words, or the figure as people read it; empty: nothing is said
    double number = no_number;      // in the column's unit; NaN: words only
    double uncertainty = no_number; // standard, in the same unit; NaN: none
    std::string basis, how_known, condition;
    std::vector<std::string> sources; // keys
    std::string reason;               // why there is no value

    static DataCell words(const std::string& text);
    /// Rounded to 12 figures: more are noise of converting units.
    static DataCell figure(double number, const std::string& text);
};

struct DataColumn {
    std::string id, title, unit = {};
    bool number = false; // figures, set to the right
    bool traced = false; // each figure has uncertainty, condition and sources of its own
};

struct DataTable {
    std::string title;
    std::vector<DataColumn> columns;
    std::vector<std::vector<DataCell>> rows;
};

struct Document {
    std::string title;
    std::vector<std::pair<std::string, std::string>> conditions; // name, value: "temperature_K", "293.15"
    std::vector<std::string> notes;
    std::vector<DataTable> parts;          // the first is the answer
    std::vector<const Reference*> sources; // of every key in the parts, each once
    std::string data_version, date;
};

/// Adds a source once; a key nobody knows is passed over.
void add_source(Document& document, const Catalogue& catalogue, const std::string& key);
/// Fills `sources` from the keys in the parts, in the order they appear.
void collect_sources(Document& document, const Catalogue& catalogue);

/// The shortest digits that read back as the same number, without the machine's language.
std::string exact(double number);

} // namespace pourbook

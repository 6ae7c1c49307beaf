// A data table without anything inside its cells: one column each for value, uncertainty, how it is known, condition,
// sources and reason. What CSV, XLSX and the clipboard take.
#pragma once

#include "answers/parts/document.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct FlatCell {
    std::string text;
    double number = no_number; // NaN: the text
};

struct FlatColumn {
    std::string title, unit;
    bool operator==(const FlatColumn&) const = default;
};

struct Flat {
    std::vector<FlatColumn> columns;
    std::vector<std::vector<FlatCell>> rows;
};

Flat flat(const DataTable& table);

/// All parts under each other with a column that names the part, and the document's conditions, version, date and the
/// references of each row at the end.
Flat flat(const Document& document);

} // namespace pourbook

// A data table without anything inside its cells: one column each for value, uncertainty, how it is known, condition,
// sources and reason. What CSV, XLSX and the clipboard take.
#pragma once

#include "answers/parts/document.hpp"

#include <string>
#include <vector>

namespace pourbook {

DataTable flat(const DataTable& table);

/// All parts under each other with a column that names the part, and the document's conditions, version, date and the
/// references of each row at the end.
DataTable flat(const Document& document);

} // namespace pourbook

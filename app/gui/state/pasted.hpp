// Rows copied from a spreadsheet as entries of a kind: columns by the names in the first row, where it has any, else in
// the order of the grid.
#pragma once

#include "core/workshop/kinds.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// The fields a grid of this kind shows, in order; empty where it has none.
const std::vector<std::string>& grid_fields(const Kind& kind);

/// Errors: unreadable, where there is no row, or a row has more cells than there are columns.
Result<std::vector<Entry>> entries_from_paste(const Kind& kind, const std::string& text);

} // namespace pourbook

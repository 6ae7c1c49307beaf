// A table put in the order of a column by a click on its head: highest first, lowest first, as it came.
#pragma once

#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>
#include <vector>

namespace pourbook {

/// Like header_row() (widgets/text.hpp), of a table whose columns can be clicked.
void sorted_header_row(Ui& ui, const std::string& id, int left);

/// What a row holds in a column: a figure, or words where that is NaN.
struct SortCell {
    double number;
    std::string words;
};

/// The rows in the order asked for, worked out again only where `key` (of the rows) or the order is another. The column
/// is counted as the table's.
const std::vector<std::size_t>& sorted_rows(Ui& ui, const std::string& id, const std::string& key, std::size_t rows,
                                            const std::function<SortCell(std::size_t row, int column)>& cell);

} // namespace pourbook

// Opens a list for import: CSV row by row, or JSON (a list of objects, or an object that holds one).
#pragma once

#include "core/workshop/row_source.hpp"

#include <memory>

namespace pourbook {

/// Errors: file (can't be opened), unreadable (no list, unknown columns: place, reason, remedy).
Result<std::unique_ptr<RowSource>> open_rows(const std::string& path, const Kind& kind, const ColumnWords& words);

/// The same from a stream, for tests. `size` in bytes, for the share that is read; 0: unknown.
Result<std::unique_ptr<RowSource>> read_rows(std::unique_ptr<std::istream> in, std::size_t size,
                                             const std::string& name, const Kind& kind, const ColumnWords& words);

} // namespace pourbook

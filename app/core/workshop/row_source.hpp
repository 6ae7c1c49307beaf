// Rows of a file on their way into the workshop, one at a time, so that a file of any length goes through.
#pragma once

#include "core/workshop/kinds.hpp"

#include <utility>

namespace pourbook {

/// A row turned into an entry; with a fault it is rejected already.
struct SourceRow {
    int line = 0;
    Entry entry;
    std::string fault_column, fault; // what is wrong and what to do
};

class RowSource {
public:
    virtual ~RowSource() = default;
    /// False at the end. Errors: unreadable (the file can't be read any further: line, reason, remedy).
    virtual Result<bool> next(SourceRow& row) = 0;
    /// The file's own name for a field: the header of its column.
    virtual std::string column_of(std::size_t field) const = 0;
    virtual std::vector<std::string> ignored_columns() const = 0;
    virtual double share_read() const = 0; // 0 to 1
};

/// How the columns of a file are to be read where their headers don't say.
struct ColumnWords {
    std::vector<std::string> map;                           // "Preis=price"; "Preis=-" leaves a column out
    std::vector<std::string> units;                         // "price=EUR/kg"
    std::vector<std::pair<std::string, std::string>> fixed; // field and value where the file has no column for it
};

} // namespace pourbook

// Which column of a shop's list, a film log or a data set is which field of an entry, and in which unit.
//
// A header is known by the field's name or one of its other names, in any case, with '_', '-' or blanks; a unit may
// stand behind it in brackets: "price [EUR/kg]", "mass (g)"; or in a column of its own: "unit", "price unit".
#pragma once

#include "core/workshop/row_source.hpp"
#include "importers/shop/decimal_marks.hpp"

#include <string>
#include <vector>

namespace pourbook {

class Columns {
public:
    /// Errors: unreadable: a column named twice, a field that the kind has not in `words`, no column known at all.
    static Result<Columns> from(const Kind& kind, const std::vector<std::string>& headers, const ColumnWords& words);

    /// Fills row.entry from the cells; a cell that can't be read as a number without guessing becomes row.fault.
    /// other_list: not parted by commas, so that a comma in a number may be its decimal mark.
    void read(const std::vector<std::string>& cells, bool other_list, SourceRow& row) const;
    /// Learns from a row what the decimal mark of each column is. Before any row of such a list is read.
    void look_at(const std::vector<std::string>& cells);

    std::string column_of(std::size_t field) const;
    const std::vector<std::string>& ignored() const { return ignored_; }

private:
    struct Column {
        std::string header;
        std::size_t field = 0; // kind.fields.size(): left out
        bool is_unit = false;  // holds the unit of the field
        std::string unit;      // of every cell
        DecimalMarks marks;
    };
    explicit Columns(const Kind& kind) : kind_(&kind) {}
    Result<bool> add(const std::string& header, const ColumnWords& words);
    Column recognised(const std::string& header, const ColumnWords& words) const;
    std::string complete(const Column& column, const std::string& unit, bool other_list, std::string& text) const;
    std::string plain_figure(const Column& column, bool other_list, std::string& text) const;
    std::string unit_of(const Column& column, const std::vector<std::string>& cells) const;

    const Kind* kind_;
    std::vector<Column> columns_;
    std::vector<std::string> ignored_;
    std::vector<std::pair<std::string, std::string>> fixed_;
};

} // namespace pourbook

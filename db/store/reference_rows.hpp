// Reading the reference's tables row by row; for the files that read it alone.
#pragma once

#include "core/materials/catalogue.hpp"
#include "db/store/reference_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <string>

namespace pourbook {

/// Columns of a row, read left to right.
class Row {
public:
    explicit Row(SQLite::Statement& statement) : statement_(statement) {}
    std::string text() { return statement_.getColumn(next_++).getString(); }
    bool flag() { return statement_.getColumn(next_++).getInt() != 0; }
    std::size_t count() { return static_cast<std::size_t>(statement_.getColumn(next_++).getInt64()); }
    double number() {
        const SQLite::Column column = statement_.getColumn(next_++);
        return column.isNull() ? no_number : column.getDouble();
    }
    Phase phase() { return known(phase_named(text())); }
    HowKnown how_known() { return known(how_known_named(text())); }
    Use use() { return known(use_named(text())); }

private:
    template <class E> static E known(const std::optional<E>& value) {
        if (!value) throw StoreError("an unknown word stands in the reference");
        return *value;
    }
    SQLite::Statement& statement_;
    int next_ = 0;
};

/// Every row of a query, one after the other.
template <class Take> void each(SQLite::Database& db, const std::string& sql, Take take) {
    SQLite::Statement statement(db, sql);
    while (statement.executeStep()) {
        Row row(statement);
        take(row);
    }
}

/// Atomic masses, phase diagrams, and what dissolved elements do to resistivity and volume. Throws StoreError.
void read_alloy_data(SQLite::Database& db, AlloyData& a);

} // namespace pourbook

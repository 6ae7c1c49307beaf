// Rows of the workshop's file: one statement for each thing that is done to a kind, check sums, and the journal of what
// was changed.
#pragma once

#include "core/workshop/workshop.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <stdexcept>

namespace pourbook {

/// A row whose check sum does not fit.
class DamagedRow : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// CRC-32 (ISO-HDLC, as in gzip) over the texts, each ended by a byte that no text holds.
std::uint32_t seal_of(const std::vector<std::string>& texts);

/// The same over kind, id and values; a field of a later schema counts, by its name, only where it says something.
std::uint32_t seal_of(const Kind& kind, const Entry& entry);

/// "\"lot\",\"metal\"", the kind's columns in order.
std::string columns_of(const Kind& kind);

/// Reads id, seal and the values from a row "id, seal, columns...". Throws DamagedRow.
Entry entry_from(const Kind& kind, SQLite::Statement& row);

/// Statements for one kind, prepared once.
class KindRows {
public:
    KindRows(SQLite::Database& db, const Kind& kind);

    const Kind& kind() const { return kind_; }
    std::vector<Entry> all();
    std::optional<Entry> by_id(std::int64_t id);
    std::optional<Entry> by_key(const Entry& entry); // nothing for a kind without a key
    /// False where an entry with this key is there already.
    bool insert(const Entry& entry);
    void update(const Entry& entry);
    void erase(std::int64_t id);
    std::int64_t next_id();

private:
    void bind_values(SQLite::Statement& statement, int from, const Entry& entry);

    SQLite::Database& db_;
    const Kind& kind_;
    SQLite::Statement all_, by_id_, by_key_, insert_, update_, erase_;
};

/// One more than any number given so far. Throws DamagedRow where there is none.
std::int64_t next_number(SQLite::Database& db, const std::string& table, const std::string& column);

/// Keeps the rows `first` to `last` of the kind in the journal as they are now, or as absent.
void keep_before(SQLite::Database& db, std::int64_t change, const Kind& kind, std::int64_t id);
void keep_absent(SQLite::Database& db, std::int64_t change, const Kind& kind, std::int64_t first, std::int64_t last);

/// Puts back what the change replaced and keeps in the journal what stood there, so that doing it again redoes. Throws
/// DamagedRow where a check sum of the journal, or of what comes back, does not fit: then roll back.
void turn_back(SQLite::Database& db, std::int64_t change);

} // namespace pourbook

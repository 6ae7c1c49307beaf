#include "db/store/workshop_rows.hpp"

#include <array>

namespace pourbook {
namespace {

constexpr std::array<std::uint32_t, 256> crc_table() {
    std::array<std::uint32_t, 256> table{};
    for (std::uint32_t i = 0; i < 256; ++i) {
        std::uint32_t c = i;
        for (int bit = 0; bit < 8; ++bit) c = (c & 1) ? 0xEDB88320U ^ (c >> 1) : c >> 1;
        table[i] = c;
    }
    return table;
}

std::uint32_t add_to(std::uint32_t crc, const std::string& text) {
    static constexpr auto table = crc_table();
    for (const char c : text) crc = table[(crc ^ static_cast<unsigned char>(c)) & 0xFF] ^ (crc >> 8);
    return table[(crc ^ 0xFF) & 0xFF] ^ (crc >> 8); // a byte that no text holds ends each
}

constexpr std::int64_t highest_id = std::int64_t{1} << 53;
constexpr int sealed_whole = 2; // the last schema whose fields are sealed also where they are empty

std::string quoted(const std::string& name) {
    return "\"" + name + "\"";
}

std::string marks(std::size_t count) {
    std::string out = "?";
    for (std::size_t i = 1; i < count; ++i) out += ",?";
    return out;
}

std::string select(const Kind& kind, const std::string& where) {
    return "SELECT id, seal, " + columns_of(kind) + " FROM " + quoted(kind.name) + " " + where;
}

std::string insert_text(const Kind& kind) {
    return "INSERT INTO " + quoted(kind.name) + " (id, seal, " + columns_of(kind) + ") VALUES (" +
           marks(kind.fields.size() + 2) + ") ON CONFLICT DO NOTHING";
}

std::string update_text(const Kind& kind) {
    return "UPDATE " + quoted(kind.name) + " SET (seal, " + columns_of(kind) + ") = (" + marks(kind.fields.size() + 1) +
           ") WHERE id = ?";
}

std::string key_condition(const Kind& kind) {
    std::string out;
    for (const std::string& field : kind.key) out += (out.empty() ? "WHERE " : " AND ") + quoted(field) + " = ?";
    return out.empty() ? "WHERE 0" : out;
}

/// A row of the kind as a JSON list of seal and texts.
std::string as_list(const Kind& kind) {
    return "json_array(" + quoted(kind.name) + ".seal, " + columns_of(kind) + ")";
}

std::string from_list(const Kind& kind) {
    std::string out;
    for (std::size_t i = 0; i <= kind.fields.size(); ++i)
        out += (i ? ", " : "") + ("json_extract(before, '$[" + std::to_string(i) + "]')");
    return out;
}

void check_journal(SQLite::Database& db, std::int64_t change) {
    SQLite::Statement bad(db, "SELECT count(*) FROM change_row WHERE change = ? AND "
                              "seal IS NOT pourbook_seal(change, kind, first, last, before)");
    bad.bind(1, change);
    bad.executeStep();
    if (bad.getColumn(0).getInt() > 0) throw DamagedRow("the check sum of its record does not fit");
}

void check_came_back(SQLite::Database& db, std::int64_t change, const Kind& kind) {
    SQLite::Statement row(db, select(kind, "WHERE id IN (SELECT first FROM change_row WHERE change = ? AND kind = ? "
                                           "AND before IS NOT NULL)"));
    row.bind(1, change);
    row.bind(2, kind.name);
    while (row.executeStep()) entry_from(kind, row);
}

void run(SQLite::Database& db, const std::string& sql, std::int64_t change, const std::string& kind) {
    SQLite::Statement statement(db, sql);
    statement.bind(1, change);
    statement.bind(2, kind);
    statement.exec();
}

/// One kind of a change: what is there now goes to `kept`, what was there before comes back.
void turn_back_kind(SQLite::Database& db, std::int64_t change, const Kind& kind) {
    const std::string table = quoted(kind.name);
    const std::string touched = " FROM change_row r CROSS JOIN " + table + " ON " + table +
                                ".id BETWEEN r.first AND r.last WHERE r.change = ?1 AND r.kind = ?2";
    run(db, "INSERT INTO kept SELECT ?2, id, id, " + as_list(kind) + touched, change, kind.name);
    run(db,
        "INSERT OR IGNORE INTO kept SELECT kind, first, last, NULL FROM change_row r WHERE change = ?1 AND kind = "
        "?2 AND before IS NOT NULL",
        change, kind.name);
    run(db, "DELETE FROM " + table + " WHERE id IN (SELECT " + table + ".id" + touched + ")", change, kind.name);
    run(db,
        "INSERT INTO " + table + " (id, seal, " + columns_of(kind) + ") SELECT first, " + from_list(kind) +
            " FROM change_row WHERE change = ?1 AND kind = ?2 AND before IS NOT NULL",
        change, kind.name);
    check_came_back(db, change, kind);
}

} // namespace

std::uint32_t seal_of(const std::vector<std::string>& texts) {
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const std::string& text : texts) crc = add_to(crc, text);
    return crc ^ 0xFFFFFFFFU;
}

std::uint32_t seal_of(const Kind& kind, const Entry& entry) {
    std::uint32_t crc = add_to(0xFFFFFFFFU, kind.name);
    crc = add_to(crc, std::to_string(entry.id));
    for (std::size_t i = 0; i < entry.values.size(); ++i) {
        const bool later = kind.fields[i].since > sealed_whole;
        if (later && entry.values[i].empty()) continue;
        if (later) crc = add_to(crc, kind.fields[i].name);
        crc = add_to(crc, entry.values[i]);
    }
    return crc ^ 0xFFFFFFFFU;
}

std::string columns_of(const Kind& kind) {
    std::string out;
    for (const Field& field : kind.fields) out += (out.empty() ? "" : ", ") + quoted(field.name);
    return out;
}

Entry entry_from(const Kind& kind, SQLite::Statement& row) {
    Entry entry = new_entry(kind);
    entry.id = row.getColumn(0).getInt64();
    for (std::size_t i = 0; i < entry.values.size(); ++i)
        entry.values[i] = row.getColumn(static_cast<int>(i) + 2).getString();
    if (row.getColumn(1).getInt64() != seal_of(kind, entry))
        throw DamagedRow("the check sum of " + kind.name + " " + std::to_string(entry.id) + " does not fit");
    return entry;
}

KindRows::KindRows(SQLite::Database& db, const Kind& kind)
    : db_(db), kind_(kind), all_(db, select(kind, "ORDER BY id")), by_id_(db, select(kind, "WHERE id = ?")),
      by_key_(db, select(kind, key_condition(kind))), insert_(db, insert_text(kind)), update_(db, update_text(kind)),
      erase_(db, "DELETE FROM " + quoted(kind.name) + " WHERE id = ?") {}

std::vector<Entry> KindRows::all() {
    std::vector<Entry> out;
    all_.reset();
    while (all_.executeStep()) out.push_back(entry_from(kind_, all_));
    all_.reset();
    return out;
}

std::optional<Entry> KindRows::by_id(std::int64_t id) {
    by_id_.reset();
    by_id_.bind(1, id);
    std::optional<Entry> found;
    if (by_id_.executeStep()) found = entry_from(kind_, by_id_);
    by_id_.reset();
    return found;
}

std::optional<Entry> KindRows::by_key(const Entry& entry) {
    if (kind_.key.empty()) return std::nullopt;
    by_key_.reset();
    int at = 0;
    for (const std::string& field : kind_.key) by_key_.bind(++at, text_of(kind_, entry, field));
    std::optional<Entry> found;
    if (by_key_.executeStep()) found = entry_from(kind_, by_key_);
    by_key_.reset();
    return found;
}

void KindRows::bind_values(SQLite::Statement& statement, int from, const Entry& entry) {
    statement.bind(from, static_cast<std::int64_t>(seal_of(kind_, entry)));
    for (const std::string& value : entry.values) statement.bindNoCopy(++from, value);
}

bool KindRows::insert(const Entry& entry) {
    insert_.reset();
    insert_.bind(1, entry.id);
    bind_values(insert_, 2, entry);
    const bool added = insert_.exec() == 1;
    insert_.reset();
    return added;
}

void KindRows::update(const Entry& entry) {
    update_.reset();
    bind_values(update_, 1, entry);
    update_.bind(static_cast<int>(entry.values.size()) + 2, entry.id);
    update_.exec();
    update_.reset();
}

void KindRows::erase(std::int64_t id) {
    erase_.reset();
    erase_.bind(1, id);
    erase_.exec();
    erase_.reset();
}

std::int64_t KindRows::next_id() {
    return next_number(db_, kind_.name, "id");
}

std::int64_t next_number(SQLite::Database& db, const std::string& table, const std::string& column) {
    // The counter is SQLite's own and has no check sum: one that is gone or out of all reason doesn't count.
    SQLite::Statement highest(db, "SELECT max(coalesce((SELECT max(seq) FROM sqlite_sequence WHERE name = ?1 AND "
                                  "typeof(seq) = 'integer' AND seq BETWEEN 0 AND ?2), 0), coalesce((SELECT max(" +
                                      quoted(column) + ") FROM " + quoted(table) + "), 0)) + 1");
    highest.bind(1, table);
    highest.bind(2, highest_id);
    highest.executeStep();
    const std::int64_t next = highest.getColumn(0).getInt64();
    if (next < 1 || next > highest_id) throw DamagedRow("the numbers of " + table + " have come to their end");
    return next;
}

void keep_before(SQLite::Database& db, std::int64_t change, const Kind& kind, std::int64_t id) {
    SQLite::Statement keep(db,
                           "INSERT INTO change_row SELECT ?1, ?2, id, id, kept, pourbook_seal(?1, ?2, id, id, kept) "
                           "FROM (SELECT id, " +
                               as_list(kind) + " AS kept FROM " + quoted(kind.name) + " WHERE id = ?3)");
    keep.bind(1, change);
    keep.bind(2, kind.name);
    keep.bind(3, id);
    keep.exec();
}

void keep_absent(SQLite::Database& db, std::int64_t change, const Kind& kind, std::int64_t first, std::int64_t last) {
    SQLite::Statement keep(db,
                           "INSERT INTO change_row VALUES (?1, ?2, ?3, ?4, NULL, pourbook_seal(?1, ?2, ?3, ?4, NULL))");
    keep.bind(1, change);
    keep.bind(2, kind.name);
    keep.bind(3, first);
    keep.bind(4, last);
    keep.exec();
}

void turn_back(SQLite::Database& db, std::int64_t change) {
    check_journal(db, change);
    db.exec("CREATE TEMP TABLE kept (kind TEXT, first INTEGER, last INTEGER, before TEXT, PRIMARY KEY (kind, first))");
    for (const Kind& kind : workshop_kinds()) turn_back_kind(db, change, kind);
    run(db, "DELETE FROM change_row WHERE change = ?1 AND ?2 <> ''", change, "all");
    run(db,
        "INSERT INTO change_row SELECT ?1, kind, first, last, before, pourbook_seal(?1, kind, first, last, before) "
        "FROM "
        "kept WHERE ?2 <> ''",
        change, "all");
    db.exec("DROP TABLE kept");
}

} // namespace pourbook

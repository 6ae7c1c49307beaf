#include "db/store/workshop_guard.hpp"

#include "db/store/workshop_rows.hpp"

#include <sqlite3.h>

#include <cctype>
#include <map>

namespace pourbook {
namespace {

constexpr int longest_value_bytes = 8'000'000; // of a value or a row: 30 fields of 100,000 bytes, as JSON

void seal_in_sql(sqlite3_context* context, int count, sqlite3_value** values) {
    std::vector<std::string> texts;
    for (int i = 0; i < count; ++i) {
        const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(values[i]));
        texts.emplace_back(text ? text : "\x01none");
    }
    sqlite3_result_int64(context, seal_of(texts));
}

/// Blanks don't matter: SQLite keeps the text of a statement as it was written.
std::string without_blanks(const std::string& sql) {
    std::string out;
    for (const char c : sql)
        if (!std::isspace(static_cast<unsigned char>(c))) out += c;
    return out;
}

/// "trigger 't'" and what makes it.
std::map<std::string, std::string> parts_of(SQLite::Database& db) {
    std::map<std::string, std::string> out;
    SQLite::Statement part(db, "SELECT type || ' ''' || name || '''', coalesce(sql, '') FROM sqlite_schema "
                               "WHERE name <> 'sqlite_sequence'");
    while (part.executeStep()) out[part.getColumn(0).getString()] = without_blanks(part.getColumn(1).getString());
    return out;
}

} // namespace

void defend(SQLite::Database& db) {
    sqlite3* handle = db.getHandle();
    for (const auto& [setting, on] : {std::pair{SQLITE_DBCONFIG_DEFENSIVE, 1},
                                      {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
                                      {SQLITE_DBCONFIG_ENABLE_TRIGGER, 0},
                                      {SQLITE_DBCONFIG_ENABLE_VIEW, 0}})
        db.check(sqlite3_db_config(handle, setting, on, nullptr));
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, longest_value_bytes);
    db.check(sqlite3_create_function(handle, "pourbook_seal", -1,
                                     SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_DIRECTONLY, nullptr, seal_in_sql,
                                     nullptr, nullptr));
}

std::string foreign_part(SQLite::Database& db, const std::vector<SchemaStep>& steps, int version) {
    SQLite::Database fresh(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    for (const SchemaStep& step : steps)
        if (step.to <= version) fresh.exec(step.sql);
    const auto own = parts_of(fresh), there = parts_of(db);
    for (const auto& [name, sql] : there)
        if (const auto known = own.find(name); known == own.end() || known->second != sql) return name;
    for (const auto& [name, sql] : own)
        if (!there.contains(name)) return "no " + name;
    return {};
}

} // namespace pourbook

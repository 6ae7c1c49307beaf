#include "db/store/workshop_open.hpp"

#include "db/store/workshop_rows.hpp"

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>

#include <ctime>
#include <filesystem>

namespace pourbook {
namespace {

namespace fs = std::filesystem;
constexpr std::uintmax_t thorough_below_bytes = 16 << 20; // the thorough check takes 0.1 s for this much

Problem file_problem(std::string text) {
    return {Problem::Kind::file, std::move(text), 0};
}

/// The day and time the file was last written, which names the copy: one copy of one damage.
std::string last_written(const std::string& path) {
    std::error_code error;
    const auto age = fs::file_time_type::clock::now() - fs::last_write_time(path, error);
    const std::time_t when = std::time(nullptr) - std::chrono::duration_cast<std::chrono::seconds>(age).count();
    std::tm utc{};
    char text[20];
    if (error || !gmtime_r(&when, &utc) || !std::strftime(text, sizeof text, "%Y%m%d-%H%M%S", &utc)) return "unknown";
    return text;
}

bool same_content_size(const std::string& a, const std::string& b) {
    std::error_code first, second;
    return fs::file_size(a, first) == fs::file_size(b, second) && !first && !second;
}

/// Copies the damaged file and its journal, once. Returns a sentence about it.
std::string keep_damaged(const std::string& path) {
    const std::string copy = path + ".damaged-" + last_written(path);
    std::error_code error;
    if (!same_content_size(path, copy)) {
        const std::string target = free_name(copy);
        fs::copy_file(path, target, error);
        if (error) return "it was left as it is (no copy could be made: " + error.message() + ")";
        fs::copy_file(path + "-journal", target + "-journal", error); // most often there is none
        return "it was left as it is, a copy is '" + target + "'";
    }
    return "it was left as it is, a copy is '" + copy + "'";
}

Problem damaged(const std::string& path, const std::string& why) {
    return file_problem("'" + path + "' is damaged (" + why + "): " + keep_damaged(path) +
                        "; put a backup in its place with `pourbook backup --restore FILE`");
}

int pragma(SQLite::Database& db, const std::string& name) {
    return db.execAndGet("PRAGMA " + name).getInt();
}

void check_sound(SQLite::Database& db, const std::string& path) {
    std::error_code error;
    const bool small = fs::file_size(path, error) < thorough_below_bytes;
    const std::string verdict =
        db.execAndGet(small ? "PRAGMA integrity_check(1)" : "PRAGMA quick_check(1)").getString();
    if (verdict != "ok") throw damaged(path, verdict.substr(0, verdict.find('\n')));
}

void check_kind_of_file(SQLite::Database& db, const std::string& path, int newest) {
    const int application = pragma(db, "application_id"), version = pragma(db, "user_version");
    if (application != workshop_application)
        throw file_problem("'" + path + "' is no workshop file of this program: name another with --workshop");
    if (version > newest)
        throw file_problem("'" + path + "' was written by a newer version (schema " + std::to_string(version) +
                           ", this program knows " + std::to_string(newest) + "): update the program");
    if (version < 1) throw damaged(path, "it has no schema number");
}

/// Every step above the file's version, all in one; the journal of changes belongs to the old tables and goes.
void bring_up_to_date(SQLite::Database& db, const std::string& path, const std::vector<SchemaStep>& steps) {
    db.exec("BEGIN IMMEDIATE");
    const int version = pragma(db, "user_version"); // another program may have been first
    const int newest = steps.back().to;
    if (version > 0 && version < newest) {
        SQLite::Database before(path, SQLite::OPEN_READONLY);
        copy_to_file(before, free_name(path + ".before-schema-" + std::to_string(newest)));
        db.exec("DELETE FROM change");
        db.exec("DELETE FROM change_row");
    }
    for (const SchemaStep& step : steps)
        if (step.to > version) db.exec(step.sql);
    db.exec("PRAGMA application_id = " + std::to_string(workshop_application));
    db.exec("PRAGMA user_version = " + std::to_string(std::max(version, newest)));
    db.exec("COMMIT");
}

void make_folder(const std::string& path) {
    const fs::path folder = fs::path(path).parent_path();
    std::error_code error;
    if (!folder.empty()) fs::create_directories(folder, error);
    if (error) throw file_problem("the folder of '" + path + "' can't be made: " + error.message());
}

} // namespace

std::string free_name(const std::string& path) {
    std::string name = path;
    for (int i = 2; fs::exists(fs::symlink_status(name)); ++i) name = path + "-" + std::to_string(i);
    return name;
}

void copy_to_file(SQLite::Database& db, const std::string& path) {
    const std::string draft = path + ".draft";
    std::error_code ignored;
    fs::remove(draft, ignored);
    try {
        {
            SQLite::Database copy(draft, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            SQLite::Backup backup(copy, db);
            while (backup.executeStep(-1) != SQLITE_DONE)
                if (sqlite3_sleep(20) < 0) break;
        }
        fs::rename(draft, path);
    } catch (...) {
        fs::remove(draft, ignored);
        throw;
    }
}

Problem problem_of(const std::string& path, const std::exception& error) {
    if (dynamic_cast<const DamagedRow*>(&error)) return damaged(path, error.what());
    const auto* failure = dynamic_cast<const SQLite::Exception*>(&error);
    if (!failure) return file_problem("'" + path + "': " + error.what());
    switch (failure->getErrorCode() & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return file_problem("'" + path +
                            "' is being written by another program and stayed locked: nothing was "
                            "changed; try again when it has finished");
    case SQLITE_FULL:
        return file_problem("no space left for '" + path + "': nothing was changed; free some and try again");
    case SQLITE_READONLY:
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
        return file_problem("'" + path + "' can't be opened or written (" + failure->getErrorStr() +
                            "): nothing was changed; check the rights of the file and its folder, or name another "
                            "with --workshop");
    case SQLITE_IOERR:
        return file_problem("'" + path + "' can't be read or written (" + failure->getErrorStr() +
                            "): nothing was changed; check the disk and its free space");
    default:
        return damaged(path, failure->what());
    }
}

std::unique_ptr<SQLite::Database> opened(const std::string& path, const WorkshopOptions& options) {
    if (fs::is_directory(path))
        throw file_problem("'" + path + "' is a folder: name a file with --workshop, such as " + path +
                           "/workshop.sqlite");
    std::error_code error;
    bool there = fs::exists(path, error) && fs::file_size(path, error) > 0;
    if (!there) make_folder(path);
    auto db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE | (there ? 0 : SQLite::OPEN_CREATE),
                                                 options.wait_ms);
    db->exec("PRAGMA synchronous = EXTRA");
    db->exec("PRAGMA foreign_keys = ON");
    db->exec("PRAGMA cache_spill = OFF"); // readers wait for a commit only, not for a whole import
    db->exec("PRAGMA temp_store = MEMORY");
    const int newest = options.schema.back().to;
    there = there && pragma(*db, "page_count") > 0; // none: it was being made when its maker died
    if (there) {
        check_sound(*db, path);
        check_kind_of_file(*db, path, newest);
    }
    if (!there || pragma(*db, "user_version") < newest) bring_up_to_date(*db, path, options.schema);
    return db;
}

} // namespace pourbook

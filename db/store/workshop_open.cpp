#include "db/store/workshop_open.hpp"

#include "db/store/workshop_guard.hpp"
#include "db/store/workshop_rows.hpp"
#include "platform/clock.hpp"
#include "platform/files.hpp"

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace pourbook {
namespace {

namespace fs = std::filesystem;
constexpr std::uintmax_t thorough_below_bytes = 16 << 20; // the thorough check takes 0.1 s for this much

Problem file_problem(std::string text) {
    return {Problem::Kind::file, std::move(text), 0};
}

/// The day and time the file was last written, which names the copy.
std::string last_written(const std::string& path) {
    const std::int64_t when = platform::last_written_s(path);
    return when == 0 ? "unknown" : platform::utc_stamp(when);
}

bool same_content(const std::string& a, const std::string& b) {
    std::error_code first, second;
    if (fs::file_size(a, first) != fs::file_size(b, second) || first || second) return false;
    std::ifstream one(a, std::ios::binary), other(b, std::ios::binary);
    const std::istreambuf_iterator<char> end;
    return one && other && std::equal(std::istreambuf_iterator<char>(one), end, std::istreambuf_iterator<char>(other));
}

/// A copy of this very damage: a change that was given up writes the file anew as it was, at a later time.
std::string copy_made_before(const std::string& path) {
    const fs::path file(path);
    const std::string start = file.filename().string() + ".damaged-";
    std::error_code error;
    for (const fs::directory_entry& entry : fs::directory_iterator(file.parent_path(), error))
        if (entry.path().filename().string().starts_with(start) && same_content(path, entry.path().string()))
            return entry.path().string();
    return {};
}

/// Copies the damaged file and its journal, once. Returns a sentence about it.
std::string keep_damaged(const std::string& path) {
    std::error_code error;
    std::string copy = copy_made_before(path);
    if (copy.empty()) {
        copy = free_name(path + ".damaged-" + last_written(path));
        fs::copy_file(path, copy, error);
        if (error) {
            std::error_code ignored;
            fs::remove(copy, ignored); // what there was room for
            return "it was left as it is (no copy could be made: " + error.message() + ")";
        }
        fs::copy_file(path + "-journal", copy + "-journal", error); // most often there is none
    }
    return "it was left as it is, a copy is '" + copy + "'";
}

Problem damaged(const std::string& path, const std::string& why) {
    return file_problem(
        "'" + path + "' is damaged (" + why + "): " + keep_damaged(path) +
        "; put a backup in its place with `pourbook backup --restore FILE`, or gather what is sound in it with "
        "`pourbook backup --salvage NEW-FILE`");
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

void check_schema(SQLite::Database& db, const std::string& path, const std::vector<SchemaStep>& steps) {
    const std::string part = foreign_part(db, steps, pragma(db, "user_version"));
    if (!part.empty())
        throw file_problem("'" + path + "' is not as this program makes its files (" + part +
                           "): it was left as it is; gather what is sound in it with `pourbook backup --salvage "
                           "NEW-FILE`");
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
    const bool made = !folder.empty() && fs::create_directories(folder, error);
    if (error) throw file_problem("the folder of '" + path + "' can't be made: " + error.message());
    if (made) fs::permissions(folder, fs::perms::owner_all, error); // prices, sellers, trials: nobody else's business
}

/// Takes a file away again that came to nothing.
void remove_empty(const std::string& path) {
    std::error_code error;
    if (fs::file_size(path, error) == 0 && !error) fs::remove(path, error);
}

std::unique_ptr<SQLite::Database> connected(const std::string& path, bool there, const WorkshopOptions& options) {
    auto db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE | (there ? 0 : SQLite::OPEN_CREATE),
                                                 options.wait_ms);
    defend(*db);
    db->exec("PRAGMA synchronous = EXTRA");
    db->exec("PRAGMA foreign_keys = ON");
    db->exec("PRAGMA cell_size_check = ON");
    db->exec("PRAGMA cache_spill = OFF"); // readers wait for a commit only, not for a whole import
    db->exec("PRAGMA temp_store = MEMORY");
    const int newest = options.schema.back().to;
    if (there && pragma(*db, "page_count") > 0) { // none: it was being made when its maker died
        check_kind_of_file(*db, path, newest);
        check_schema(*db, path, options.schema);
        check_sound(*db, path);
    }
    if (pragma(*db, "user_version") < newest) bring_up_to_date(*db, path, options.schema);
    return db;
}

} // namespace

std::string free_name(const std::string& path) {
    std::string name = path;
    for (int i = 2; fs::exists(fs::symlink_status(name)); ++i) name = path + "-" + std::to_string(i);
    return name;
}

void copy_to_file(SQLite::Database& db, const std::string& path) {
    const std::string draft = platform::draft_name(path, "draft");
    std::error_code ignored;
    fs::remove(draft, ignored);
    try {
        platform::make_private(draft);
        {
            SQLite::Database copy(draft, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            SQLite::Backup backup(copy, db);
            while (backup.executeStep(-1) != SQLITE_DONE)
                if (sqlite3_sleep(20) < 0) break;
        }
        const fs::file_status source = fs::status(db.getFilename(), ignored);
        if (fs::exists(source)) fs::permissions(draft, source.permissions(), ignored);
        fs::rename(draft, path);
    } catch (...) {
        fs::remove(draft, ignored);
        throw;
    }
}

Problem problem_of(const std::string& path, const std::exception& error) {
    if (dynamic_cast<const DamagedRow*>(&error)) return damaged(path, error.what());
    if (dynamic_cast<const std::bad_alloc*>(&error))
        return file_problem("'" + path + "': not enough memory; nothing was changed");
    if (const auto* system = dynamic_cast<const std::system_error*>(&error))
        return file_problem("'" + path + "' can't be read or written: " + system->code().message());
    const auto* failure = dynamic_cast<const SQLite::Exception*>(&error);
    if (!failure) return file_problem("'" + path + "' can't be read or written: nothing was changed");
    if (failure->getExtendedErrorCode() == SQLITE_READONLY_DBMOVED)
        return file_problem("'" + path + "' was replaced meanwhile: nothing was changed; try again");
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

bool has_content(const std::string& path) {
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (status.type() == fs::file_type::not_found) return false;
    return status.type() != fs::file_type::regular || fs::file_size(path, error) > 0 || error;
}

std::unique_ptr<SQLite::Database> opened(const std::string& path, const WorkshopOptions& options) {
    constexpr std::uintmax_t least_bytes = 100; // of SQLite's own head
    if (path.empty()) throw file_problem("there is no home folder for a file of your own: name one with --workshop");
    std::error_code error;
    if (fs::is_directory(path, error))
        throw file_problem("'" + path + "' is a folder: name a file with --workshop, such as " + path +
                           "/workshop.sqlite");
    if (has_content(path)) {
        if (fs::is_regular_file(path, error) && fs::file_size(path, error) < least_bytes)
            throw damaged(path, "it has only " + std::to_string(fs::file_size(path, error)) + " bytes");
        return connected(path, true, options);
    }
    if (path == ":memory:") return connected(path, false, options); // a dry run's
    make_folder(path);
    const bool made = platform::make_private(path);
    try {
        return connected(path, false, options);
    } catch (...) {
        if (made) remove_empty(path);
        throw;
    }
}

} // namespace pourbook

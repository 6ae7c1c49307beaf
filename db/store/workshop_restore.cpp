// Putting a backup in the place of the workshop's file.
#include "db/store/workshop_file.hpp"

#include "core/workshop/kinds.hpp"
#include "db/store/workshop_open.hpp"

#include <sqlite3.h>

#include <filesystem>
#include <optional>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

/// Keeps every writer away until it is destroyed; null where there is no file or none that could be written.
std::unique_ptr<SQLite::Database> locked(const std::string& path) {
    std::error_code error;
    if (!fs::is_regular_file(path, error)) return nullptr;
    try {
        auto db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE, WorkshopOptions{}.wait_ms);
        db->exec("BEGIN EXCLUSIVE");
        return db;
    } catch (const SQLite::Exception& e) {
        const int code = e.getErrorCode() & 0xFF;
        if (code == SQLITE_BUSY || code == SQLITE_LOCKED) throw;
        return nullptr; // damaged: that is what a backup is for
    }
}

/// Puts `ready` in the place of the file, which is kept under another name; there is a file at the path all the while.
/// Returns the name.
std::string put_in_place(const std::string& ready, const std::string& path) {
    std::string kept;
    if (fs::exists(fs::symlink_status(path))) {
        kept = free_name(path + ".before-restore");
        std::error_code no_links;
        fs::create_hard_link(path, kept, no_links);
        if (no_links) fs::rename(path, kept);
        if (fs::exists(path + "-journal")) fs::rename(path + "-journal", kept + "-journal");
    }
    fs::rename(ready, path);
    return kept;
}

/// Opens and reads all of it, the journal too: every check sum is looked at.
std::optional<Problem> fault_of(const std::string& path) {
    const Result<std::unique_ptr<Workshop>> workshop = open_workshop(path);
    if (!workshop) return workshop.problem();
    for (const Kind& kind : workshop_kinds())
        if (const auto entries = (*workshop)->entries(kind); !entries) return entries.problem();
    if (const auto changes = (*workshop)->changes(); !changes) return changes.problem();
    return std::nullopt;
}

/// The file itself where the path is a link to it.
std::string without_links(const std::string& path) {
    std::error_code error;
    const fs::path real = fs::is_symlink(path, error) ? fs::weakly_canonical(path, error) : fs::path(path);
    return error ? path : real.string();
}

} // namespace

Result<std::string> restore_workshop(const std::string& path, const std::string& backup) {
    std::error_code error;
    if (!fs::is_regular_file(backup, error)) return Problem{Problem::Kind::file, "no backup at '" + backup + "'", 0};
    if (path.empty())
        return Problem{Problem::Kind::file, "there is no home folder for a file of your own: name one with --workshop",
                       0};
    if (const std::optional<Problem> fault = fault_of(backup)) return *fault;
    const std::string target = without_links(path);
    return guarded(path, [&]() -> Result<std::string> {
        const std::string ready = free_name(target + ".restored");
        try {
            {
                SQLite::Database source(backup, SQLite::OPEN_READONLY);
                copy_to_file(source, ready);
            }
            const fs::file_status old = fs::status(target, error);
            const fs::perms own = fs::perms::owner_read | fs::perms::owner_write;
            fs::permissions(ready, fs::exists(old) ? old.permissions() : own, error);
            const auto lock = locked(target);
            return put_in_place(ready, target);
        } catch (...) {
            fs::remove(ready, error);
            throw;
        }
    });
}

} // namespace pourbook

// Opening the workshop's file: what it is, whether it is sound, of which schema; and what is said when it is not.
#pragma once

#include "db/store/workshop_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace pourbook {

/// The file's number of the application (PRAGMA application_id), "pour" in ASCII.
constexpr int workshop_application = 0x706F7572;

/// What a failure of SQLite means to the person; keeps a copy of a damaged file. Rethrows nothing.
Problem problem_of(const std::string& path, const std::exception& error);

/// Runs f; what it throws becomes a Problem.
template <class F> auto guarded(const std::string& path, F f) -> decltype(f()) {
    try {
        return f();
    } catch (const Problem& p) {
        return p;
    } catch (const std::exception& e) {
        return problem_of(path, e);
    }
}

/// Opened, checked and of the newest schema; made where there is no file. Throws what problem_of understands, or a
/// Problem.
std::unique_ptr<SQLite::Database> opened(const std::string& path, const WorkshopOptions& options);

/// False where there is no file, or an empty one: nothing was ever entered.
bool has_content(const std::string& path);

/// A copy of the open database in a new file, complete or not there at all, with the rights of the
/// source. Throws.
void copy_to_file(SQLite::Database& db, const std::string& path);

/// `path` itself, or with -2, -3 ... behind it where that is taken.
std::string free_name(const std::string& path);

} // namespace pourbook

// A copy of the workshop's file by itself: before the first change of each day, FILE.daily-2026-11-25 beside it; the
// last seven are kept.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <vector>

namespace pourbook {

/// Makes today's copy (UTC) where there is none, takes away the oldest beyond seven and drafts that a killed program
/// left more than a day ago. A copy that can't be made is no reason not to write: it is tried again with the next
/// change.
void keep_daily(SQLite::Database& db, const std::string& path);

/// The copies that lie beside the file, made by itself or asked for, newest first.
std::vector<std::string> copies_beside(const std::string& path);

} // namespace pourbook

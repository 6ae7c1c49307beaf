// A group of edits being written to the workshop's file: one transaction, with its journal.
#pragma once

#include "core/workshop/workshop.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <memory>

namespace pourbook {

/// Takes the write lock. Throws.
std::unique_ptr<Batch> begin_batch(const std::string& path, std::shared_ptr<SQLite::Database> db,
                                   const std::string& words);

} // namespace pourbook

// What an opened workshop file may not do: run SQL of its own, hold other tables than the program's, or fill the
// memory.
#pragma once

#include "db/store/workshop_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace pourbook {

/// Triggers, views and functions in the schema are off, values have a largest length, and the function
/// pourbook_seal(...) is there: CRC-32 over the text of its arguments. Throws.
void defend(SQLite::Database& db);

/// The first table, index, trigger or view that schema `version` does not have, or has otherwise, as "trigger 't'";
/// empty where the file holds what the steps make and nothing else. Throws.
std::string foreign_part(SQLite::Database& db, const std::vector<SchemaStep>& steps, int version);

} // namespace pourbook

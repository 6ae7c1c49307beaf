// The workshop's own file: one SQLite file beside the reference's, never touched by an update of the reference.
//
// Rollback journal with synchronous=EXTRA: a change is on the disk when commit() returns, or not at all, whatever is
// killed when. The file is checked when it is opened and every row carries a check sum. A damaged file is never
// written: a copy is kept beside it (FILE.damaged-...) and the problem says so. A file of an older schema is backed up
// (FILE.before-schema-N) before it is brought up to date; one of a newer schema is refused.
#pragma once

#include "core/workshop/workshop.hpp"

#include <memory>
#include <string>
#include <vector>

namespace pourbook {

/// The tables as a step from the schema before; step 1 makes them.
struct SchemaStep {
    int to = 1;
    std::string sql;
};
const std::vector<SchemaStep>& released_schema();

struct WorkshopOptions {
    int wait_ms = 5000;                                 // for another program that writes
    std::vector<SchemaStep> schema = released_schema(); // another one only in tests of the steps themselves
};

/// Opens the file, or stands ready to make it with the first change. Errors: file.
Result<std::unique_ptr<Workshop>> open_workshop(const std::string& path, const WorkshopOptions& options = {});

/// Puts a backup's content in the file's place. What was there, sound or damaged, is kept; returns where (empty: there
/// was nothing). Errors: file.
Result<std::string> restore_workshop(const std::string& path, const std::string& backup);

} // namespace pourbook

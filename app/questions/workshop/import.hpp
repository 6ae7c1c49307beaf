// A file's rows into the workshop, all or none: the first pass through a batch that is committed only if no row was
// rejected; a dry run goes the same way and stops before the commit.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/workshop/row_source.hpp"
#include "core/workshop/workshop.hpp"

#include <functional>

namespace pourbook {

struct Rejection {
    int line = 0;
    std::string column, reason; // the reason ends with the remedy
};

struct ImportWatch {
    std::function<void(const Rejection&)> rejected;
    std::function<void(std::size_t rows, double share)> progress; // now and then
    std::function<bool()> cancelled;
};

struct ImportResult {
    std::size_t rows = 0, added = 0, changed = 0, unchanged = 0, rejected = 0;
    bool dry_run = false, cancelled = false, written = false;
    std::vector<std::string> first; // of what is added or changed, the first few
    std::vector<std::string> ignored_columns;
};

/// Errors: those of the file and of the source; rejected rows are no error here but leave `written` false.
Result<ImportResult> import_rows(const Catalogue& catalogue, Workshop& workshop, const Kind& kind, RowSource& source,
                                 bool dry_run, const std::string& words, const ImportWatch& watch);

} // namespace pourbook

// The compiled reference on disk: one SQLite file, written whole, opened read-only.
#pragma once

#include "core/materials/catalogue.hpp"

#include <stdexcept>
#include <string>

namespace pourbook {

/// The schema number this program writes and reads (PRAGMA user_version).
constexpr int schema_number = 2;

/// A file that can't be read or written, is damaged, or was made by another version. what() is one plain line.
class StoreError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// The tables of a reference file, as SQL.
const char* reference_schema();

/// Writes beside the target and renames, so that a failure leaves the old file as it was. Same catalogue, same bytes.
void write_reference(const Catalogue& catalogue, const std::string& path);

/// The catalogue, indexed and ready.
Catalogue read_reference(const std::string& path);

} // namespace pourbook

// What the person enters into the workshop's file, checked as a whole before it is kept.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/workshop/workshop.hpp"

namespace pourbook {

/// The entry as it may be kept: fields checked (core/workshop/check_entry.hpp), and what they mean together: a goal's
/// formula, a trial's set-up and what its type needs, an own value's unit. The catalogue holds the workshop's own.
/// Errors: as check_entry; the column is the field's number where one field is at fault.
Result<Entry> sound(const Catalogue& catalogue, const Kind& kind, Entry entry);

/// A change of one entry or several, as one group. Errors: those of the file.
struct Kept {
    Put outcome = Put::added;
    Entry entry; // with its number and name
};
Result<Kept> keep(Workshop& workshop, const Kind& kind, const Entry& entry, const std::string& words);
Result<bool> remove(Workshop& workshop, const Kind& kind, const std::vector<Entry>& entries, const std::string& words);

} // namespace pourbook

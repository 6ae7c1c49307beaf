// Lists of the workshop's own file: as text, as JSON, as CSV. JSON and CSV hold every field as it was written and can
// be imported again without loss; the figures in SI stand beside them under "si" (JSON) and are left out on import.
#pragma once

#include "core/workshop/workshop.hpp"

#include <string>
#include <vector>

namespace pourbook {

std::string json_of_entries(const Kind& kind, const std::vector<Entry>& entries);
/// RFC 4180, comma, CRLF, a header. A cell that a spreadsheet would take for a formula gets a leading apostrophe, which
/// the import takes off again.
std::string csv_of_entries(const Kind& kind, const std::vector<Entry>& entries);
/// The same for the clipboard, columns separated by tabs.
std::string tabs_of_entries(const Kind& kind, const std::vector<Entry>& entries);
/// Columns that are empty in every entry are left out.
std::string text_of_entries(const Kind& kind, const std::vector<Entry>& entries);

std::string json_of_changes(const std::vector<Change>& changes);
std::string text_of_changes(const std::vector<Change>& changes);

} // namespace pourbook

// A pour sheet as a file, by the ending of its name: .pdf (A4, for the wall), .html, .md, .txt or .json.
#pragma once

#include "core/result.hpp"
#include "report/pour_report.hpp"

#include <optional>
#include <string>

namespace pourbook {

/// Whole or not at all. Errors: unreadable (the ending), bad_file, no_value (a font of the PDF is missing).
std::optional<Problem> write_pour_sheet(const PourResult& plan, const Catalogue& catalogue, UnitSystem units,
                                        const std::string& file, const std::string& date);

} // namespace pourbook

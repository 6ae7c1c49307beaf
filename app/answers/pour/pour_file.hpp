// A pour sheet as a file, by the ending of its name: .pdf (A4, for the wall), .html, .md, .txt or .json.
#pragma once

#include "answers/pour/pour_report.hpp"
#include "core/result.hpp"

#include <string>

namespace pourbook {

inline constexpr const char* pour_sheet_endings = ".pdf, .html, .md, .txt or .json";

/// The file's bytes. Errors: unreadable (the ending), no_value (a font of the PDF is missing).
Result<std::string> pour_sheet_file(const PourResult& plan, const Catalogue& catalogue, UnitSystem units,
                                    const std::string& file, const std::string& date);

} // namespace pourbook

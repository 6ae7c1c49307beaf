// Cells of a CSV file (RFC 4180) that a spreadsheet shows and does not run.
#pragma once

#include <string>

namespace pourbook {

/// A text that a spreadsheet would run as a formula gets an apostrophe in front; one that already has apostrophes
/// before such a sign gets one more, so that a reader who takes one away has the text again.
std::string defused(const std::string& text);

/// Defused, and in quotation marks where a sign of `parting` or a blank at an end asks for them.
std::string csv_cell(const std::string& text, const char* parting = ",\"\r\n");

} // namespace pourbook

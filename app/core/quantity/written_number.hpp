// A number as people write it: "25.4", "25,4" (decimal comma), "1/2", "1 1/2", "1-1/2", "1½", "-78.5", "1e-3".
// A comma with exactly three digits behind it may part thousands ("1,200"): it is refused with both readings.
// Independent of the locale.
#pragma once

#include "core/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

/// Takes the number off the front of the text. Errors: unreadable, with the column in this text; text is left alone.
Result<double> take_written_number(std::string_view& text);

/// No unit stands behind the number: "26", "1/2", "12+-0.1".
bool is_bare(std::string_view text);

/// What stands behind the number, without blanks: "mm" of "25,4 mm"; empty for a bare number or no number.
std::string unit_behind(std::string_view text);

/// Lengths of one chain, "22:28:400mm". One unit at the end serves all where it is mm, cm or in; else every length
/// needs its own. `sign` parts them in the message. Errors: unreadable, with what was probably meant.
Result<std::vector<std::string>> with_shared_unit(std::vector<std::string> lengths, const std::string& sign);

/// Parts of a list. A semicolon separates; without one a comma does, and parts without a unit take the last one's.
/// `counts`: whole numbers, so that a comma is never a decimal one. Errors: unreadable, with both readings, where the
/// text may as well be decimal numbers: "8,1s".
Result<std::vector<std::string>> list_parts(const std::string& text, bool counts);

} // namespace pourbook

// Which mark is the decimal one in a column of numbers, and numbers made plain by it: 1.234,5 and 1,234.5 -> 1234.5.
#pragma once

#include <string>

namespace pourbook {

/// What the numbers of a column have told so far.
struct DecimalMarks {
    bool comma = false; // a decimal comma was seen: 0,5 or 1.234,5
    bool point = false; // a decimal point was seen: 0.5 or 1,234.5

    /// Takes in a number (digits and marks only).
    void look_at(const std::string& number);
};

/// Thousands marks taken out, the decimal mark made a point. A mark followed by three digits alone is what the other
/// numbers of the column say; where they say nothing, a point is decimal in a list parted by commas, a comma in any
/// other list (`other_list`), and the rest is refused. Returns why it can't be told, or nothing.
std::string plain_number(std::string& text, bool other_list, const DecimalMarks& marks);

} // namespace pourbook

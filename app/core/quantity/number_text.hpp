// Decimal text to number and back, the same on every machine: the standard libraries of some systems (the browser's,
// Apple's) have no std::from_chars and std::to_chars of a double. Nothing here heeds the person's language.
#pragma once

#include <string>
#include <string_view>

namespace pourbook {

/// Takes the longest decimal number ("-1.5e-3", ".5"; no sign +, no blank before it, no "inf") off the front: the
/// nearest double. False, and nothing is taken, where there is none or it is larger or smaller than any double.
bool take_decimal(std::string_view& text, double& number);

/// "12.50": so many digits after the point, correctly rounded, half to even.
std::string fixed_digits(double value, int decimals);
/// "1.25e+01"
std::string scientific_digits(double value, int decimals);

/// The fewest digits that read back as the same number (a power of two may get one more): "0.1", "1e+22", fixed where
/// that is no longer.
std::string shortest_digits(double value);

} // namespace pourbook

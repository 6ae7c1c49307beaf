// A figure as printed: "1.678", "25 to 33", ">= 58".
#pragma once

#include "core/materials/record.hpp"
#include "core/quantity/unit.hpp"

#include <string>

namespace pourbook {

/// Half a unit of the last printed digit: 0.0005 for "1.678", 0.5 for "250" or "1e0".
double half_of_last_digit(const std::string& number);

/// The figure in SI, with range or bound and the half unit of its last digit. Errors: unreadable.
Result<Point> read_figure(const std::string& printed, const Unit& unit);

} // namespace pourbook

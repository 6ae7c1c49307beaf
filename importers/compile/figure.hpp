// A figure as printed: "1.678", "25 to 33", ">= 58".
#pragma once

#include "core/materials/record.hpp"
#include "core/quantity/unit.hpp"

#include <string>

namespace pourbook {

/// The figure in SI, with range or bound and the half unit of its last digit. Errors: unreadable.
Result<Point> read_figure(const std::string& printed, const Unit& unit);

} // namespace pourbook

// Sentences that the core and the practice of the trade say in SI, in the units of their reader.
#pragma once

#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Every amount in the sentence, "12 to 15 mm", "680 degC": temperatures in °C (in K below 200 K), differences in K;
/// for the workshop in °F, inches, ounces and pounds, in3, lbf, in/s and ft/min, to as many digits as were written.
/// "293 K" is a temperature behind "at", "from", "to" and the like, else a difference. What stands in square brackets
/// (a source with its printed figure) and a sentence with an equation stay as they are.
std::string in_units_of(UnitSystem units, const std::string& sentence);

} // namespace pourbook

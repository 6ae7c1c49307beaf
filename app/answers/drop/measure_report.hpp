// What a workshop measured of magnet and tube as JSON and as text; without readings the sheet to fill in.
#pragma once

#include "questions/drop/measure.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

/// Without readings: {"sheet": [lines]}.
std::string json_of(const MeasureResult& result);
std::string text_of(const MeasureResult& result, UnitSystem units);

} // namespace pourbook

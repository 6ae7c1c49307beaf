// A magnet past a plate as JSON and as text.
#pragma once

#include "questions/drop/plate.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

std::string json_of(const PlateResult& result, const Catalogue& catalogue);
std::string text_of(const PlateResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook

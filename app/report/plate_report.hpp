// A magnet past a plate as JSON and as text.
#pragma once

#include "usecases/plate.hpp"
#include "usecases/shown.hpp"

#include <string>

namespace pourbook {

std::string json_of(const PlateResult& result, const Catalogue& catalogue);
std::string text_of(const PlateResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook

// Mix as JSON and as text.
#pragma once

#include "usecases/mix.hpp"
#include "usecases/shown.hpp"

#include <string>

namespace pourbook {

std::string json_of(const MixResult& result, const Catalogue& catalogue);
std::string text_of(const MixResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook

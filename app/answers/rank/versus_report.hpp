// Versus as JSON and as text.
#pragma once

#include "questions/rank/versus.hpp"

#include <string>

namespace pourbook {

std::string json_of(const VersusResult& result, const Catalogue& catalogue);
std::string text_of(const VersusResult& result, const Catalogue& catalogue);

} // namespace pourbook

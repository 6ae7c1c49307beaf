// Mix as JSON and as text.
#pragma once

#include "questions/mix/mix.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

std::string json_of(const MixResult& result, const Catalogue& catalogue);
std::string text_of(const MixResult& result, const Catalogue& catalogue, UnitSystem units);

/// Single sentences of it; empty where there is nothing to say.
std::string phases_sentence(const MixResult& result, const Catalogue& catalogue, UnitSystem units);
std::string freezing_sentence(const MixResult& result, const Catalogue& catalogue, UnitSystem units);
std::string addition_sentence(const MixResult& result);

} // namespace pourbook

// Two set-ups side by side as JSON and as text.
#pragma once

#include "questions/drop/against.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

/// The keys of drop for the first set-up, "against" with the same keys for the second, "comparison".
std::string json_of(const AgainstResult& result, const Catalogue& catalogue);
std::string text_of(const AgainstResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook

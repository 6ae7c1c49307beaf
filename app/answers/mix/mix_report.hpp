// Mix as JSON; as text and files: document_of.
#pragma once

#include "questions/mix/mix.hpp"
#include "questions/say/amounts.hpp"

#include <string>
#include <vector>

namespace pourbook {

std::string json_of(const MixResult& result, const Catalogue& catalogue);

/// In what a melt of it is weighed: kg, lb, troy ounces of silver and gold.
NamedUnit melt_unit(const MixResult& result, UnitSystem units);

/// Single sentences of it; empty where there is nothing to say.
std::string phases_sentence(const MixResult& result, const Catalogue& catalogue, UnitSystem units);
std::string freezing_sentence(const MixResult& result, const Catalogue& catalogue, UnitSystem units);
std::string addition_sentence(const MixResult& result, UnitSystem units);
std::string scrap_sentence(const MixResult& result);
std::vector<std::string> loss_sentences(const MixResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook

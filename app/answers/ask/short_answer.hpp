// The answer alone: one sentence, with one line of caution where metal or set-up carries a hazard; or plain numbers for
// pipes, parted by tabs, in the units of the text.
#pragma once

#include "questions/drop/drop.hpp"
#include "questions/metals/value.hpp"
#include "questions/rank/rank.hpp"
#include "questions/rank/versus.hpp"
#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// "copper (high purity): density 8.960 ± 0.045 g/cm³." Several of one metal name it once.
std::string sentence_of(const std::vector<ValueResult>& values, UnitSystem units);
std::string sentence_of(const RankResult& result);
std::string sentence_of(const DropResult& result);

std::string short_answer(const ValueResult& result, const Catalogue& catalogue, UnitSystem units);
std::string short_answer(const RankResult& result, const Catalogue& catalogue, UnitSystem units);
std::string short_answer(const VersusResult& result, const Catalogue& catalogue, UnitSystem units);
std::string short_answer(const DropResult& result, const Catalogue& catalogue, UnitSystem units);

/// value, standard uncertainty, unit
std::string plain_answer(const ValueResult& result, UnitSystem units);
/// a line a metal: slug, merit, low and high of 90 % (SI)
std::string plain_answer(const RankResult& result, UnitSystem units);
/// ratio, low and high of 90 %, probability of the better, its slug
std::string plain_answer(const VersusResult& result, UnitSystem units);
/// fall time, low and high of 90 %, in seconds
std::string plain_answer(const DropResult& result, UnitSystem units);

} // namespace pourbook

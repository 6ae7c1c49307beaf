// The fields of a ranking, of two goals at once, and of two metals against each other.
#pragma once

#include "questions/rank/rank.hpp"
#include "questions/rank/tradeoff.hpp"
#include "questions/rank/versus.hpp"

namespace pourbook {

const QuestionOf<RankRequest>& rank_question();
const QuestionOf<TradeoffRequest>& tradeoff_question();
const QuestionOf<VersusRequest>& versus_question();

} // namespace pourbook

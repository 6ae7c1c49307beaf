// A question in the person's own words, answered by the question of the program that it means.
#pragma once

#include "questions/ask/question_reader.hpp"
#include "questions/drop/drop.hpp"
#include "questions/metals/value.hpp"
#include "questions/pour/defects.hpp"
#include "questions/rank/rank.hpp"
#include "questions/rank/versus.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Under which conditions it is answered where the words say nothing else.
struct AskUnder {
    AskUnder() { part.casting.emplace(); }
    Conditions figure; // a figure of a metal
    Conditions part;   // which metal is better, and what a part will do: asked of castings
    bool operator==(const AskUnder&) const = default;
};

struct AskRequest {
    std::string words;
    std::vector<std::string> shelf; // slugs on the shelf, for "from my shelf"
    AskUnder under = {};
};

/// One of the parts is filled, as read.asked says; where none is, `fault` says why.
struct AskResult {
    QuestionRead read;
    std::vector<ValueResult> values; // of a value, several metals; of a sheet, its main figures
    std::optional<VersusResult> versus;
    std::optional<RankResult> rank;
    std::optional<DropResult> drop;
    std::vector<Defect> defects;
    std::string fault;
    std::vector<std::string> cautions; // of the metals named
};

/// Errors: unreadable, where nothing in the words is known here, with what comes near.
Result<AskResult> ask(const Catalogue& catalogue, const AskRequest& request);

} // namespace pourbook

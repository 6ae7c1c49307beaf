// The words of a ranking, shared by `rank` and `chart rank`, and those of a goal.
#pragma once

#include "cli/context.hpp"
#include "usecases/rank.hpp"

#include <string>

namespace pourbook {

struct RankWords {
    RankRequest request;
    std::string best = "high";

    /// The request as asked, under these conditions.
    RankRequest asked(const Conditions& conditions, double to_K) const;
};

/// --goal, or --formula with --best.
void with_goal(CLI::App* command, GoalWords& words, std::string& best);

/// With those of the conditions. `words` must outlive the command.
void with_rank_words(Context& context, CLI::App* command, RankWords& words);

} // namespace pourbook

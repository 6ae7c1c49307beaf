// The words of a ranking, shared by `rank` and `chart rank`, and those of a goal.
#pragma once

#include "cli/context.hpp"
#include "questions/rank/rank.hpp"

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

/// Takes the usual goal where neither a goal nor a formula was named, and says so.
void take_usual_goal(const Context& context, const Catalogue& catalogue, GoalWords& words);

/// What is ranked, and by which catalogue.
struct RankedFrom {
    RankRequest request;
    std::optional<Catalogue> shelf; // of --from stock: with the prices paid

    const Catalogue& in(const Catalogue& all) const { return shelf ? *shelf : all; }
};
/// Errors: no_value (nothing on the shelf), unknown (a lot of a metal that is not known here).
Result<RankedFrom> ranked_from(const Context& context, const Catalogue& catalogue, RankRequest request);

/// With those of the conditions. `words` must outlive the command.
void with_rank_words(Context& context, CLI::App* command, RankWords& words);

} // namespace pourbook

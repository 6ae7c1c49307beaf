// The words of a ranking, shared by `rank` and `chart rank`.
#pragma once

#include "cli/context.hpp"
#include "usecases/rank.hpp"

#include <optional>
#include <string>

namespace pourbook {

struct RankWords {
    RankRequest request;
    std::string best = "high";

    /// Takes the upper end of a range of temperatures from --at.
    std::optional<Problem> read_range(std::string& at);
    /// The request as asked, under these conditions.
    RankRequest asked(const Conditions& conditions) const;
};

/// With those of the conditions. `words` must outlive the command.
void with_rank_words(Context& context, CLI::App* command, RankWords& words);

} // namespace pourbook

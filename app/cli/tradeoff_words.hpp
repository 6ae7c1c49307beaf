// The words of two goals at once, shared by `tradeoff` and `chart tradeoff`.
#pragma once

#include "cli/context.hpp"
#include "questions/rank/tradeoff.hpp"

#include <string>

namespace pourbook {

struct TradeoffWords {
    TradeoffRequest request;
    std::string best = "high", and_best = "high";

    /// The request as asked, under these conditions.
    TradeoffRequest asked(const Conditions& conditions, double to_K) const;
};

/// With those of the conditions. `words` must outlive the command.
void with_tradeoff_words(Context& context, CLI::App* command, TradeoffWords& words);

} // namespace pourbook

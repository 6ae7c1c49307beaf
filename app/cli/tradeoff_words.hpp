// The words of two goals at once, shared by `tradeoff` and `chart tradeoff`.
#pragma once

#include "usecases/tradeoff.hpp"

#include <CLI/CLI.hpp>

namespace pourbook {

/// `request` must outlive the command.
inline void with_tradeoff_words(CLI::App* c, TradeoffRequest& request) {
    c->add_option("--goal", request.first.goal, "the one goal")->required();
    c->add_option("--and", request.second.goal, "the other goal")->required();
    c->add_option("--where", request.first.where, "a condition; may be repeated");
    c->add_option("--from", request.from, "only these metals, separated by commas")->delimiter(',');
}

} // namespace pourbook

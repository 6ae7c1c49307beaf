// Which metals serve a goal best, what is left out and why, and what can't be ranked for want of a value.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/ranking/formula.hpp"
#include "core/ranking/order.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace pourbook {

struct RankRequest {
    std::string goal;    // id of a named goal, or empty
    std::string formula; // used when goal is empty
    bool best_high = true;
    std::vector<std::string> where;
    std::vector<std::string> from; // slugs or names; empty: all metals
    Conditions conditions;
    bool include_unusual = false; // drop the goal's own conditions and the bar on metals unfit for home casting
    std::size_t top = 0;          // 0: all
    std::size_t samples = 2000;
    std::uint64_t seed = 1;
};

struct RankInput {
    std::string property;
    Evaluated value;
};

struct RankedMetal {
    const Metal* metal = nullptr;
    Place place;
    std::vector<RankInput> inputs; // the values that entered
    bool from_memory = false;      // a value that entered is only remembered
};

struct LeftOut {
    const Metal* metal = nullptr;
    std::string reason;
    std::vector<std::string> missing; // unrankable only: property ids
};

struct RankResult {
    std::string goal, label, sentence, formula, unit;
    bool best_high = true;
    Conditions conditions;
    std::vector<RankedMetal> ranked;
    std::size_t ranked_in_all = 0; // before `top` cut the list
    std::vector<LeftOut> excluded;
    std::vector<LeftOut> unrankable;
};

/// Metals found by words (see search_metals) that meet every condition; a metal without the needed value does not meet
/// it. Errors: unreadable (condition, with column).
Result<std::vector<const Metal*>> list_metals(const Catalogue& catalogue, const std::string& find,
                                              const std::vector<std::string>& where, const Conditions& conditions);

/// Errors: unreadable (formula, condition or goal, with column), unknown (metal).
Result<RankResult> rank(const Catalogue& catalogue, const RankRequest& request);

} // namespace pourbook

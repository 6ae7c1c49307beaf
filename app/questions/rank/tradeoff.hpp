// Two goals at once: which metals no other beats in both (the Pareto front), and who beats the rest.
#pragma once

#include "questions/rank/rank.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct TradeoffRequest {
    GoalWords first, second; // both goals' conditions apply
    std::vector<std::string> from;
    Conditions conditions;
    std::size_t samples = 1000;
    std::uint64_t seed = 1;
    std::optional<double> to_K = {}; // upper end of a range of temperatures, as in a ranking
    bool operator==(const TradeoffRequest&) const = default;
};

struct TradeoffPoint {
    const Metal* metal = nullptr;
    Place first, second; // medians and 90 % intervals of the two merits; ranks are not used
    bool on_front = false;
    std::string beaten_by; // slug of a metal better in both; empty on the front
    bool from_memory = false;
    std::vector<std::string> sources; // keys behind both merits, each once
};

struct TradeoffResult {
    std::string first_label, first_formula, first_unit, second_label, second_formula, second_unit;
    bool first_high = true, second_high = true;
    Conditions conditions;
    double to_K = no_number;
    std::vector<TradeoffPoint> points; // front first, best in the first goal on top
    std::vector<LeftOut> excluded, unrankable;
};

/// Errors: as rank().
Result<TradeoffResult> tradeoff(const Catalogue& catalogue, const TradeoffRequest& request,
                                const Progress& progress = {});

} // namespace pourbook

// Two metals and a goal: which is better, by how much, how surely, and why, in one sentence fit to paste under a video.
#pragma once

#include "questions/rank/goal_plan.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct VersusRequest {
    std::string a, b;
    GoalWords goal;
    Conditions conditions;
    std::size_t samples = 4000;
    std::uint64_t seed = 1;
    std::optional<double> to_K = {}; // upper end of a range of temperatures, as in a ranking
    bool operator==(const VersusRequest&) const = default;
};

struct VersusSide {
    const Metal* metal = nullptr;
    double merit = 0;
    std::vector<RankInput> inputs;
    bool from_memory = false;
    double at_K = no_number; // over a range: where the merit is worst, and the inputs are from
    std::string barred;      // what the goal would leave it out for; said, not enforced: the question names the metal
};

/// A change of the castings' state, or of what they hold, that turns the order or ends the certainty.
struct Flip {
    std::string change;  // "more than about 0.03 % phosphorus stays in the copper", "aged sterling silver"
    std::string element; // of a content: its symbol; empty: a porosity or a treatment
    const Metal* metal = nullptr;
    double threshold = no_number; // per cent; NaN of a treatment
    std::string then;             // slug of who is better then; "draw"
};

struct VersusResult {
    std::string goal, label, formula, unit;
    bool best_high = true;
    Conditions conditions;
    double to_K = no_number;
    VersusSide better, worse; // on a tie: in the order asked
    bool tie = false;         // probability below 0.95
    double ratio_median = 1;  // better over worse, >= 1; all three NaN where a ratio has no meaning
    double ratio_low90 = 1, ratio_high90 = 1;
    /// In its place by how much the better is better, >= 0: temperatures, and what is not well away from zero.
    double difference_median = no_number, difference_low90 = no_number, difference_high90 = no_number;
    std::string difference_unit; // empty: a ratio is given, or the difference has no unit
    double p_winner = 0.5;
    std::string deciding;                 // property that speaks most for the better; empty: none does by itself
    std::vector<std::string> in_spite_of; // properties that count against the better
    std::string held;          // what is equal for both: "parts of the same size"; empty where it doesn't matter
    std::string reason;        // why, in terms of properties and physics
    std::vector<Flip> flips;   // of castings, what is likeliest to happen first
    std::string flip_sentence; // "It holds unless ... . ", a blank behind it; empty: nothing in reach turns it
    std::string sentence;
    std::vector<std::string> sources; // keys, each once
};

/// Errors: unknown (metal), unreadable (goal), no_value or out_of_range (a property of one of them, named; a formula
/// without a finite value in more than half of the samples).
Result<VersusResult> versus(const Catalogue& catalogue, const VersusRequest& request);

} // namespace pourbook

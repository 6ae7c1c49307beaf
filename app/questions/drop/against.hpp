// Two whole set-ups side by side: which tube holds the magnet longer, by how much, how surely, and what each weighs and
// costs. "Would a thicker aluminium tube beat it?"
//
// Both are drawn together: the same magnet (all its words but the temperature alike), the same tube (dimensions and
// metal alike), the same metal and the same data move together, and what differs has errors of its own. The ratio is
// that of the two fall times, sample by sample.
#pragma once

#include "questions/drop/drop.hpp"

namespace pourbook {

struct AgainstRequest {
    DropRequest first, second; // samples and seed of the first count for both
    bool operator==(const AgainstRequest&) const = default;
};

struct AgainstResult {
    DropResult first, second;
    bool same_magnet = true;
    double ratio_median = 1; // longer over shorter fall time, by the medians, >= 1
    double ratio_low90 = 1, ratio_high90 = 1;
    double p_longer = 0.5; // chance that the one named longer is
    bool second_longer = false;
    bool tie = false; // p_longer below 0.95
    /// Wall at which the second set-up's tube would hold the magnet as long as the first does; empty where no wall is
    /// enough, or none so thin (a hundredth of the bore radius) is as quick.
    std::optional<double> equal_wall_m;
    std::string sentence;
};

/// Errors: those of drop, with the set-up they belong to.
Result<AgainstResult> against(const Catalogue& catalogue, const AgainstRequest& request);

/// What is said of one tube where it is set against another: "copper at 20 °C, bore 18 mm, wall 3 mm, length 400 mm".
std::string tube_in_words(const DropResult& result);

} // namespace pourbook

// Order of contenders from samples of their merit: medians, 90 % intervals, chance of being first, interval of rank,
// and which the data can't tell apart (better in fewer than 95 % of the samples).
//
// Made for very many contenders: samples are summed up once and dropped, and asked for again only where they can
// matter, since the same seed gives them again. What is worked out:
//   every contender            median, 90 % interval, chance of being first (these sum to 1)
//   the first `most_compared`  by median: the interval of rank, counted against every contender, and the ties among
//                              them
// For the rest rank_low and rank_high are 0 and tied_with is empty: not worked out. Time grows as n log n in
// contenders; memory as n, and as samples for the first `most_compared` only.
#pragma once

#include "core/progress.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

/// A contender summed up.
struct Standing {
    std::string_view name; // of what outlives it
    double median = 0, low90 = 0, high90 = 0;
    double lowest = 0, highest = 0; // of all samples
};

struct Place {
    std::size_t contender = 0; // index into the contenders
    std::size_t rank = 0;      // 1 is best
    double median = 0;
    double low90 = 0;
    double high90 = 0;
    double p_first = 0;
    std::size_t rank_low = 0; // 5 % and 95 % of the rank among the samples
    std::size_t rank_high = 0;
    std::vector<std::string> tied_with;
};

constexpr double told_apart = 0.95;
constexpr std::size_t most_compared = 300;

/// Without samples all of it is the nominal value.
Standing sum_up(std::string_view name, double nominal, const std::vector<double>& samples);

/// The samples of a contender; sample i of all drawn together, the same at each call.
using SamplesOf = std::function<std::vector<double>(std::size_t contender)>;

/// Best first. `samples` 0: in the order of the nominal values, intervals and chances NaN, no intervals of rank.
/// Stopped: the order so far, without the rest.
std::vector<Place> put_in_order(const std::vector<Standing>& standings, const SamplesOf& samples_of,
                                std::size_t samples, bool best_high, const Progress& progress = {});

} // namespace pourbook

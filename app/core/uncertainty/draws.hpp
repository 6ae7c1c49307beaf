// Seeded standard normal draws, one stratified column per cause of uncertainty.
// A cause's column depends on its key, the seed and the number of samples only, so the same cause moves together in
// every metal that shares it, and adding a candidate changes no other candidate's draws. Each column is a Latin
// hypercube column on a lattice (Patterson, J. R. Stat. Soc. B 16, 140, 1954; McKay, Beckman, Conover, Technometrics
// 21, 239, 1979): the middle of each of the `samples` equally probable strata once, in random order. So a function of
// one draw takes `samples` values whatever the cause: they are worked out once, stratum by stratum, and put in order.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

namespace pourbook {

class Draws {
public:
    Draws(std::size_t samples, std::uint64_t seed) : samples_(samples), seed_(seed) {}
    std::size_t samples() const { return samples_; }
    /// The cause's normal numbers. Stays valid until forget_beyond drops it.
    const std::vector<double>& of(const std::string& cause);
    /// The stratum of each sample: of(cause)[s] is strata()[order_of(cause)[s]]. Valid as long.
    const std::vector<std::uint32_t>& order_of(const std::string& cause);
    /// Middles of the strata, rising.
    const std::vector<double>& strata();
    /// Share of the probability below the middle of a stratum.
    double share_below(std::uint32_t stratum) const { return (stratum + 0.5) / static_cast<double>(samples_); }
    /// f of each stratum, by its number; kept for a while, so `which` tells this f from every other. Valid until the
    /// next call.
    template <class F> const std::vector<double>& in_strata(const std::array<double, 3>& which, F f) {
        Table& table = place_for(which);
        if (table.values.size() == samples_ && table.which == which) return table.values;
        table.which = which;
        table.values.resize(samples_);
        for (std::uint32_t i = 0; i < samples_; ++i) table.values[i] = f(i);
        return table.values;
    }
    /// Drops all columns where there are more than `most`: they come again the same when asked for.
    void forget_beyond(std::size_t most);
    /// Causes whose key begins so are drawn apart from those of other Draws of the same seed: another magnet or tube
    /// has errors of its own.
    void set_apart(const std::string& front) { apart_.push_back(front); }

private:
    struct Table {
        std::array<double, 3> which{};
        std::vector<double> values;
    };
    Table& place_for(const std::array<double, 3>& which);

    std::vector<std::string> apart_;
    std::size_t samples_;
    std::uint64_t seed_;
    std::vector<double> strata_;
    std::unordered_map<std::string, std::vector<double>> columns_;
    std::unordered_map<std::string, std::vector<std::uint32_t>> orders_;
    std::array<Table, 64> tables_;
};

/// Inverse of the standard normal distribution for 0 < p < 1. Acklam's rational approximation refined by one Halley
/// step on erfc: relative error below 1e-12 in the range used.
double normal_quantile(double p);

/// A relative standard uncertainty as a spread of the logarithm: the same while small, and the value stays above zero
/// where sources differ by a factor. Keeps the sign, which says whether a shared cause moves two values alike.
double log_spread(double relative);

/// Value at fraction q (0..1) of the numbers in order, linear between neighbours. Reorders them.
double quantile(std::vector<double>& numbers, double q);

} // namespace pourbook

// Seeded standard normal draws, one stratified column per cause of uncertainty.
// A cause's column depends on its key, the seed and the number of samples only, so the same cause moves together in
// every metal that shares it, and adding a candidate changes no other candidate's draws. Each column is a Latin
// hypercube column on a lattice (Patterson, J. R. Stat. Soc. B 16, 140, 1954; McKay, Beckman, Conover, Technometrics
// 21, 239, 1979): the middle of each of the `samples` equally probable strata once, in random order.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

namespace pourbook {

class Draws {
public:
    Draws(std::size_t samples, std::uint64_t seed) : samples_(samples), seed_(seed) {}
    std::size_t samples() const { return samples_; }
    /// Stays valid until forget_beyond drops it.
    const std::vector<double>& of(const std::string& cause);
    /// Drops all columns where there are more than `most`: they come again the same when asked for.
    void forget_beyond(std::size_t most);
    /// Causes whose key begins so are drawn apart from those of other Draws of the same seed: another magnet or tube
    /// has errors of its own.
    void set_apart(const std::string& front) { apart_.push_back(front); }

private:
    std::vector<std::string> apart_;
    std::size_t samples_;
    std::uint64_t seed_;
    std::vector<double> strata_; // middles of the strata, rising
    std::unordered_map<std::string, std::vector<double>> columns_;
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

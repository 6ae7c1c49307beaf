// Seeded standard normal draws, one stratified column per cause of uncertainty.
// A cause's column depends on its key, the seed and the number of samples only, so the same cause moves together in
// every metal that shares it, and adding a candidate changes no other candidate's draws. Each column is a Latin
// hypercube column: one draw in each of the `samples` equally probable strata, in random order.
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
    const std::vector<double>& of(const std::string& cause);

private:
    std::size_t samples_;
    std::uint64_t seed_;
    std::unordered_map<std::string, std::vector<double>> columns_;
};

/// Inverse of the standard normal distribution for 0 < p < 1. Acklam's rational approximation refined by one Halley
/// step on erfc: relative error below 1e-12 in the range used.
double normal_quantile(double p);

/// Value at fraction q (0..1) of the sorted numbers, linear between neighbours.
double quantile(std::vector<double>& numbers, double q);

} // namespace pourbook

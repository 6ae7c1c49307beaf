#include "core/uncertainty/draws.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace pourbook {
namespace {

/// SplitMix64 (Steele, Lea, Flood 2014): tiny, seedable, the same everywhere.
struct SplitMix {
    std::uint64_t state;
    std::uint64_t next() {
        std::uint64_t z = (state += 0x9e3779b97f4a7c15ULL);
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        return z ^ (z >> 31);
    }
    double uniform() { return (static_cast<double>(next() >> 11) + 0.5) * 0x1.0p-53; }
};

std::uint64_t hash_of(const std::string& text) { // FNV-1a
    std::uint64_t h = 0xcbf29ce484222325ULL;
    for (char c : text) h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    return h;
}

double tail(const double p) {
    constexpr std::array c = {-7.784894002430293e-03, -3.223964580411365e-01, -2.400758277161838e+00,
                              -2.549732539343734e+00, 4.374664141464968e+00,  2.938163982698783e+00};
    constexpr std::array d = {7.784695709041462e-03, 3.224671290700398e-01, 2.445134137142996e+00,
                              3.754408661907416e+00};
    const double q = std::sqrt(-2 * std::log(p));
    return (((((c[0] * q + c[1]) * q + c[2]) * q + c[3]) * q + c[4]) * q + c[5]) /
           ((((d[0] * q + d[1]) * q + d[2]) * q + d[3]) * q + 1);
}

double centre(const double p) {
    constexpr std::array a = {-3.969683028665376e+01, 2.209460984245205e+02,  -2.759285104469687e+02,
                              1.383577518672690e+02,  -3.066479806614716e+01, 2.506628277459239e+00};
    constexpr std::array b = {-5.447609879822406e+01, 1.615858368580409e+02, -1.556989798598866e+02,
                              6.680131188771972e+01, -1.328068155288572e+01};
    const double q = p - 0.5, r = q * q;
    return (((((a[0] * r + a[1]) * r + a[2]) * r + a[3]) * r + a[4]) * r + a[5]) * q /
           (((((b[0] * r + b[1]) * r + b[2]) * r + b[3]) * r + b[4]) * r + 1);
}

} // namespace

double normal_quantile(double p) {
    constexpr double edge = 0.02425;
    const double x = p < edge ? tail(p) : p > 1 - edge ? -tail(1 - p) : centre(p);
    const double error = 0.5 * std::erfc(-x / std::numbers::sqrt2) - p;
    const double u = error * std::sqrt(2 * std::numbers::pi) * std::exp(x * x / 2);
    return x - u / (1 + x * u / 2);
}

const std::vector<double>& Draws::of(const std::string& cause) {
    auto& column = columns_[cause];
    if (!column.empty() || samples_ == 0) return column;
    SplitMix random{hash_of(cause) ^ (seed_ * 0x2545f4914f6cdd1dULL + 1)};
    std::vector<std::size_t> stratum(samples_);
    std::iota(stratum.begin(), stratum.end(), std::size_t{0});
    for (std::size_t i = samples_ - 1; i > 0; --i) std::swap(stratum[i], stratum[random.next() % (i + 1)]);
    column.resize(samples_);
    for (std::size_t i = 0; i < samples_; ++i)
        column[i] =
            normal_quantile((static_cast<double>(stratum[i]) + random.uniform()) / static_cast<double>(samples_));
    return column;
}

double quantile(std::vector<double>& numbers, double q) {
    std::sort(numbers.begin(), numbers.end());
    const double at = q * static_cast<double>(numbers.size() - 1);
    const auto i = static_cast<std::size_t>(at);
    if (i + 1 >= numbers.size()) return numbers.back();
    const double t = at - static_cast<double>(i);
    return numbers[i] * (1 - t) + numbers[i + 1] * t;
}

} // namespace pourbook

#include "core/uncertainty/draws.hpp"

#include "core/bits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

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
    /// 0 .. n-1, n below 2^32; the bias of n / 2^32 is far below what samples can show.
    std::size_t below(std::size_t n) { return ((next() >> 32) * n) >> 32; }
};

std::uint64_t hash_of(const std::string& text) { // FNV-1a
    std::uint64_t h = 0xcbf29ce484222325ULL;
    for (char c : text) h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    return h;
}

/// 0, 1, 2 ...: copied faster than counted.
std::vector<std::uint32_t> first_numbers(std::size_t count) {
    thread_local std::vector<std::uint32_t> known;
    while (known.size() < count) known.push_back(static_cast<std::uint32_t>(known.size()));
    return {known.begin(), known.begin() + static_cast<std::ptrdiff_t>(count)};
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

const std::vector<double>& Draws::strata() {
    if (strata_.empty())
        for (std::uint32_t i = 0; i < samples_; ++i) strata_.push_back(normal_quantile(share_below(i)));
    return strata_;
}

const std::vector<double>& Draws::of(const std::string& cause) {
    auto& column = columns_[cause];
    if (!column.empty() || samples_ == 0) return column;
    const std::vector<double>& middles = strata();
    for (const std::uint32_t stratum : order_of(cause)) column.push_back(middles[stratum]);
    return column;
}

const std::vector<std::uint32_t>& Draws::order_of(const std::string& cause) {
    auto& order = orders_[cause];
    if (!order.empty() || samples_ == 0) return order;
    const bool apart =
        std::any_of(apart_.begin(), apart_.end(), [&](const std::string& front) { return cause.rfind(front, 0) == 0; });
    SplitMix random{hash_of(apart ? "apart " + cause : cause) ^ (seed_ * 0x2545f4914f6cdd1dULL + 1)};
    order = first_numbers(samples_);
    for (std::size_t i = samples_ - 1; i > 0; --i) std::swap(order[i], order[random.below(i + 1)]);
    return order;
}

Draws::Table& Draws::place_for(const std::array<double, 3>& which) {
    std::uint64_t mixed = 0;
    for (const double x : which) mixed = SplitMix{mixed ^ bits_as<std::uint64_t>(x)}.next();
    return tables_[mixed % tables_.size()];
}

void Draws::forget_beyond(std::size_t most) {
    if (columns_.size() > most) columns_.clear();
    if (orders_.size() > most) orders_.clear();
}

double log_spread(double relative) {
    return std::copysign(std::log1p(std::abs(relative)), relative);
}

double quantile(std::vector<double>& numbers, double q) {
    const double at = q * static_cast<double>(numbers.size() - 1);
    const auto whole = static_cast<std::ptrdiff_t>(at);
    const auto place = numbers.begin() + whole;
    std::nth_element(numbers.begin(), place, numbers.end());
    if (place + 1 == numbers.end()) return *place;
    const double t = at - static_cast<double>(whole), next = *std::min_element(place + 1, numbers.end());
    return *place * (1 - t) + next * t;
}

} // namespace pourbook

#include "core/eddy/tube_design.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr int scanned = 14;          // walls of the coarse grid
constexpr int golden_turns = 18;     // leaves 2e-4 of a step of it
constexpr double near_enough = 1e-6; // of a time or a length

/// Zero of a rising function by false position, an end that stays being pulled in (the Illinois rule); the end where
/// the function is not below zero.
template <class F> double risen(F f, double low, double high, double at_low, double at_high, double enough) {
    for (int i = 0; i < 60 && at_high > enough && high - low > 1e-12 * high; ++i) {
        const double x = std::clamp(low - at_low * (high - low) / (at_high - at_low), low, high);
        const double at = f(x);
        if (at < 0) {
            low = x, at_low = at, at_high /= 2;
        } else {
            high = x, at_high = at, at_low /= 2;
        }
    }
    return high;
}

/// The place of the least value between two ends (both above zero), by ratio.
template <class Value> double least_place(Value value, double low, double high) {
    if (!(high > low * (1 + near_enough))) return low;
    constexpr double nudge = 1.03;
    if (low * nudge < high && value(low) < value(low * nudge)) return low; // rises from the first: the usual case
    const double step = std::log(high / low) / (scanned - 1);
    int best = 0;
    double least = INFINITY;
    for (int i = 0; i < scanned; ++i)
        if (const double v = value(low * std::exp(step * i)); v < least) least = v, best = i;
    double from = std::log(low) + step * std::max(best - 1, 0),
           to = std::log(low) + step * std::min(best + 1, scanned - 1);
    const double section = (std::sqrt(5.0) - 1) / 2;
    double a = to - section * (to - from), b = from + section * (to - from);
    double at_a = value(std::exp(a)), at_b = value(std::exp(b));
    for (int i = 0; i < golden_turns; ++i) {
        if (at_a <= at_b) {
            to = b, b = a, at_b = at_a;
            a = to - section * (to - from), at_a = value(std::exp(a));
        } else {
            from = a, a = b, at_a = at_b;
            b = from + section * (to - from), at_b = value(std::exp(b));
        }
    }
    const double inside = std::min(at_a, at_b), place = at_a <= at_b ? a : b;
    return inside < least ? std::exp(place) : low * std::exp(step * best);
}

} // namespace

TubeSearch::TubeSearch(const WallFamily& family, double bore_radius_m, double conductivity_S_m, double density_kg_m3)
    : family_(family), bore_(bore_radius_m), conductivity_(conductivity_S_m), density_(density_kg_m3) {}

double TubeSearch::mass_kg(double wall, double length) const {
    return density_ * std::numbers::pi * wall * (2 * bore_ + wall) * length;
}

double TubeSearch::time_s(double wall, double length) const {
    FallSetup s = family_.setup(conductivity_, std::numbers::pi * wall * (2 * bore_ + wall));
    s.tube_length_m = length;
    return fall(s).time_s;
}

double TubeSearch::wall_for_mass(double mass, double length) const {
    return std::sqrt(bore_ * bore_ + mass / (density_ * std::numbers::pi * length)) - bore_;
}

TubeFound TubeSearch::found(double wall, double length) const {
    return {wall, length, time_s(wall, length), mass_kg(wall, length)};
}

std::optional<double> TubeSearch::length_for(double wanted, double wall, const TubeLimits& limits) const {
    const auto over = [&](double length) { return time_s(wall, length) - wanted; };
    const double at_high = over(limits.longest_m);
    if (at_high < 0) return std::nullopt;
    const double at_low = over(limits.shortest_m);
    if (at_low >= 0) return limits.shortest_m;
    return risen(over, limits.shortest_m, limits.longest_m, at_low, at_high, near_enough * wanted);
}

std::optional<TubeFound> TubeSearch::lightest(double wanted, const TubeLimits& l) const {
    const auto over = [&](double ln_wall) { return std::log(time_s(std::exp(ln_wall), l.longest_m) / wanted); };
    const double at_least = over(std::log(l.least_wall_m));
    double least = l.least_wall_m;
    if (at_least < 0) { // thinner walls than the one found here don't reach it in any length
        const double at_most = over(std::log(l.most_wall_m));
        if (at_most < 0) return std::nullopt;
        least = std::exp(risen(over, std::log(least), std::log(l.most_wall_m), at_least, at_most, near_enough));
    }
    const double wall = least_place(
        [&](double w) {
            const auto length = length_for(wanted, w, l);
            return length ? mass_kg(w, *length) : INFINITY;
        },
        least, l.most_wall_m);
    const auto length = length_for(wanted, wall, l);
    if (!length || mass_kg(wall, *length) > l.most_mass_kg) return std::nullopt;
    return found(wall, *length);
}

std::optional<TubeFound> TubeSearch::slowest(const TubeLimits& l) const {
    if (mass_kg(l.least_wall_m, l.shortest_m) > l.most_mass_kg) return std::nullopt;
    const auto length = [&](double wall) {
        return std::clamp(l.most_mass_kg / mass_kg(wall, 1), l.shortest_m, l.longest_m);
    };
    const double most = std::min(l.most_wall_m, wall_for_mass(l.most_mass_kg, l.shortest_m));
    // Thinner than where the longest tube takes all the mass, length does not grow any more.
    const double least = std::clamp(wall_for_mass(l.most_mass_kg, l.longest_m), l.least_wall_m, most);
    const double wall = least_place([&](double w) { return -time_s(w, length(w)); }, least, most);
    return found(wall, length(wall));
}

} // namespace pourbook::eddy

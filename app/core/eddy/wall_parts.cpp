#include "core/eddy/wall_parts.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::eddy {

std::vector<WallPart> tapered(const Bore& upper, const Bore& lower, double length_m) {
    constexpr std::size_t steps = 24; // leaves 1e-4 of the time of a bore that halves (tests/laws/eddy)
    std::vector<WallPart> out;
    for (std::size_t i = 0; i < steps; ++i) {
        const double share = (static_cast<double>(i) + 0.5) / steps, step = length_m / steps;
        const auto between = [&](double a, double b) { return a + share * (b - a); };
        out.push_back(
            {{between(upper.inner_radius_m, lower.inner_radius_m), between(upper.outer_radius_m, lower.outer_radius_m)},
             step * static_cast<double>(i),
             step * static_cast<double>(i + 1)});
    }
    return out;
}

WallProfile::WallProfile(const Magnet& magnet, std::vector<WallPart> parts) : parts_(std::move(parts)) {
    for (const WallPart& p : parts_) length_ = std::max(length_, p.to_m);
    for (const WallPart& p : parts_) {
        ends_.emplace_back(magnet, p.bore);
        if (p.from_m == 0) upper_end_ += p.conductivity * ends_.back().whole();
        if (p.to_m >= length_ * (1 - 1e-9)) lower_end_ += p.conductivity * ends_.back().whole();
    }
}

double WallProfile::share(double depth_m) const {
    double sum = 0;
    for (std::size_t i = 0; i < parts_.size(); ++i) {
        const WallPart& p = parts_[i];
        const double within = ends_[i].share(depth_m - p.from_m) + ends_[i].share(p.to_m - depth_m) - 1;
        sum += p.conductivity * ends_[i].whole() * std::max(within, 0.0);
    }
    return sum / upper_end_;
}

double WallProfile::slope_per_m(double depth_m) const {
    double sum = 0;
    for (std::size_t i = 0; i < parts_.size(); ++i)
        sum += parts_[i].conductivity * ends_[i].whole() *
               (ends_[i].slope_per_m(depth_m - parts_[i].from_m) - ends_[i].slope_per_m(parts_[i].to_m - depth_m));
    return sum / upper_end_;
}

bool WallProfile::even() const {
    return std::all_of(parts_.begin(), parts_.end(),
                       [&](const WallPart& p) { return p.from_m == 0 && p.to_m >= length_ * (1 - 1e-9); });
}

std::vector<double> WallProfile::weights(double from_m, double to_m) const {
    constexpr int steps = 400;
    std::vector<double> out;
    double all = 0;
    for (std::size_t i = 0; i < parts_.size(); ++i) {
        const WallPart& p = parts_[i];
        double sum = 0;
        for (int k = 0; k < steps; ++k) {
            const double z = from_m + (k + 0.5) / steps * (to_m - from_m);
            sum += ends_[i].share(z - p.from_m) + ends_[i].share(p.to_m - z) - 1;
        }
        sum *= p.conductivity * ends_[i].whole();
        out.resize(std::max(out.size(), p.piece + 1));
        out[p.piece] += sum;
        all += sum;
    }
    for (double& w : out) w /= all;
    return out;
}

} // namespace pourbook::eddy

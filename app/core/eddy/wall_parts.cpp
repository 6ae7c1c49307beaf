#include "core/eddy/wall_parts.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::eddy {

namespace {

constexpr double exact = 1e-5; // of the table of shares

/// Depths that follow each other, from where no part is felt to where none is any more.
std::vector<double> bends(const std::vector<WallPart>& parts, const std::vector<EndEffect>& ends) {
    std::vector<double> out;
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (const double end : {parts[i].from_m, parts[i].to_m})
            for (const double away : {-20.0, -1.0, 0.0, 1.0, 20.0}) out.push_back(end + away * ends[i].reach_m());
    std::sort(out.begin(), out.end());
    return out;
}

} // namespace

std::vector<WallPart> tapered(const Magnet& magnet, const Bore& upper, const Bore& lower, double length_m) {
    constexpr double steps_an_e = 15; // of the drag; the middle of each stands for it: (1/15)^2 / 24
    const auto ln_drag = [&](const Bore& b) {
        return std::log(TubeDrag::low_speed_of(magnet, b) / std::pow(b.inner_radius_m, 3));
    };
    const double steps = std::clamp(std::ceil(steps_an_e * std::abs(ln_drag(upper) - ln_drag(lower))), 4.0, 24.0);
    std::vector<WallPart> out;
    for (int i = 0; i < static_cast<int>(steps); ++i) {
        const double share = (i + 0.5) / steps, step = length_m / steps;
        const auto between = [&](double a, double b) { return a + share * (b - a); };
        out.push_back(
            {{between(upper.inner_radius_m, lower.inner_radius_m), between(upper.outer_radius_m, lower.outer_radius_m)},
             step * i,
             step * (i + 1)});
    }
    return out;
}

std::vector<WallOutline> outlines(const std::vector<WallPart>& parts) {
    std::vector<WallOutline> out;
    for (std::size_t i = 0, next = 0; i < parts.size(); i = next) {
        for (next = i + 1; next < parts.size() && parts[next].piece == parts[i].piece;) ++next;
        const WallPart &first = parts[i], &last = parts[next - 1];
        const double beyond = next - i < 2 ? 0 : 0.5 / static_cast<double>(next - i - 1); // half a step
        const auto end = [&](const Bore& here, const Bore& there) {
            return Bore{here.inner_radius_m + beyond * (here.inner_radius_m - there.inner_radius_m),
                        here.outer_radius_m + beyond * (here.outer_radius_m - there.outer_radius_m)};
        };
        out.push_back({end(first.bore, last.bore), end(last.bore, first.bore), first.from_m, last.to_m, first.piece});
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
    constexpr int most_halvings = 12;
    const std::vector<double> at = bends(parts_, ends_);
    knots_.push_back(summed(at.front()));
    for (std::size_t i = 1; i < at.size(); ++i) add_knots(summed(at[i - 1]), summed(at[i]), most_halvings);
}

WallProfile::Knot WallProfile::summed(double depth_m) const {
    Knot sum{depth_m, 0, 0};
    for (std::size_t i = 0; i < parts_.size(); ++i) {
        const WallPart& p = parts_[i];
        const double behind = depth_m - p.from_m, before = p.to_m - depth_m,
                     full = p.conductivity * ends_[i].whole() / upper_end_;
        sum.share += full * std::max(ends_[i].share(behind) + ends_[i].share(before) - 1, 0.0);
        sum.slope += full * (ends_[i].slope_per_m(behind) - ends_[i].slope_per_m(before));
    }
    return sum;
}

/// Those after `from` up to `to`, until the cubic meets the sum in the middle.
void WallProfile::add_knots(const Knot& from, const Knot& to, int halvings) {
    const double h = to.z - from.z;
    if (h <= 0) return;
    const Knot middle = summed(from.z + h / 2);
    const double cubic = (from.share + to.share) / 2 + h / 8 * (from.slope - to.slope);
    if (halvings > 0 && std::abs(cubic - middle.share) > exact) {
        add_knots(from, middle, halvings - 1);
        add_knots(middle, to, halvings - 1);
    } else {
        knots_.push_back(to);
    }
}

/// The knot after a depth inside the table; nullptr outside.
const WallProfile::Knot* WallProfile::above(double depth_m) const {
    if (!(depth_m >= knots_.front().z && depth_m < knots_.back().z)) return nullptr;
    return &*std::upper_bound(knots_.begin(), knots_.end(), depth_m, [](double z, const Knot& k) { return z < k.z; });
}

double WallProfile::share(double depth_m) const {
    const Knot* b = above(depth_m);
    if (!b) return 0;
    const Knot& a = *(b - 1);
    const double h = b->z - a.z, t = (depth_m - a.z) / h, s = 1 - t;
    return std::max(
        a.share * s * s * (1 + 2 * t) + b->share * t * t * (1 + 2 * s) + h * s * t * (a.slope * s - b->slope * t), 0.0);
}

double WallProfile::slope_per_m(double depth_m) const {
    const Knot* b = above(depth_m);
    if (!b) return 0;
    const Knot& a = *(b - 1);
    const double h = b->z - a.z, t = (depth_m - a.z) / h, s = 1 - t;
    return 6 * t * s * (b->share - a.share) / h + a.slope * s * (1 - 3 * t) - b->slope * t * (2 - 3 * t);
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

#include "core/eddy/drag_curve.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr double panel_width = 2;  // in ln u
constexpr double covered = 18;     // in ln u
constexpr double square_to = 2e-2; // mu0 sigma v w up to which it falls short of the linear law by a square, to 3e-9

/// Root of a monotone function by bisection in ln u.
template <class F> double bisected(F above, double low, double high) {
    for (int i = 0; i < 200 && high - low > 1e-13 * (std::abs(low) + std::abs(high)); ++i) {
        const double middle = (low + high) / 2;
        (above(middle) ? high : low) = middle;
    }
    return (low + high) / 2;
}

} // namespace

DragCurve::DragCurve(const TubeDrag& drag) : drag_(drag) {
    ln_start_ = std::log(square_to / std::min(1.0, drag.wall_over_bore()));
    for (double at = ln_start_; at < ln_start_ + covered; at += panel_width) panels_.push_back(panel_from(at));
    const double start = std::exp(ln_start_);
    square_ = (1 - drag_.force(start) / (start * low_speed())) / (start * start);
    peak_ = found_peak();
}

DragCurve::Panel DragCurve::panel_from(double ln_u) const {
    std::array<double, terms> value{};
    for (std::size_t j = 0; j < terms; ++j) {
        const double x = std::cos(std::numbers::pi * (static_cast<double>(j) + 0.5) / terms);
        const double u = std::exp(ln_u + panel_width * (x + 1) / 2);
        value[j] = std::log(drag_.force(u) / (u * drag_.low_speed()));
    }
    Panel panel{};
    for (std::size_t k = 0; k < terms; ++k) {
        for (std::size_t j = 0; j < terms; ++j)
            panel[k] += 2.0 / terms * value[j] *
                        std::cos(std::numbers::pi * static_cast<double>(k) * (static_cast<double>(j) + 0.5) / terms);
    }
    panel[0] /= 2;
    return panel;
}

double DragCurve::relative(double u) const {
    const double place = (std::log(u) - ln_start_) / panel_width;
    if (!(place > 0)) return 1 - square_ * u * u;
    const auto index = static_cast<std::size_t>(place);
    if (index >= panels_.size()) return drag_.force(u) / (u * drag_.low_speed());
    const Panel& c = panels_[index];
    const double x = 2 * (place - static_cast<double>(index)) - 1;
    double b1 = 0, b2 = 0; // Clenshaw
    for (std::size_t k = terms - 1; k > 0; --k) {
        const double b = c[k] + 2 * x * b1 - b2;
        b2 = b1;
        b1 = b;
    }
    return std::exp(c[0] + x * b1 - b2);
}

double DragCurve::force(double u) const {
    return u * low_speed() * relative(u);
}

Peak DragCurve::found_peak() const {
    constexpr double step = 0.1;
    double best = ln_start_;
    for (double t = ln_start_; t < ln_start_ + covered; t += step)
        if (force(std::exp(t)) > force(std::exp(best))) best = t;
    double low = best - step, high = best + step;
    const double golden = (std::sqrt(5.0) - 1) / 2;
    for (int i = 0; i < 60; ++i) {
        const double left = high - golden * (high - low), right = low + golden * (high - low);
        (force(std::exp(left)) < force(std::exp(right)) ? low : high) =
            force(std::exp(left)) < force(std::exp(right)) ? left : right;
    }
    const double u = std::exp((low + high) / 2);
    return {u, force(u)};
}

std::optional<double> DragCurve::stable_balance(double wanted) const {
    if (!(wanted < peak_.force)) return std::nullopt;
    const double top = std::log(peak_.u), floor = std::log(wanted / low_speed()) - 1e-9; // force <= u low_speed
    return std::exp(bisected([&](double t) { return force(std::exp(t)) > wanted; }, std::min(floor, top), top));
}

std::optional<double> DragCurve::unstable_balance(double wanted) const {
    const double top = std::log(peak_.u), end = ln_start_ + panel_width * static_cast<double>(panels_.size()) - 1e-9;
    if (!(wanted < peak_.force) || force(std::exp(end)) > wanted) return std::nullopt;
    return std::exp(bisected([&](double t) { return force(std::exp(t)) < wanted; }, top, end));
}

} // namespace pourbook::eddy

#include "core/eddy/plate_motion.hpp"

#include "core/eddy/end_effect.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace pourbook::eddy {
namespace {

constexpr double gravity = standard_gravity_m_s2;

/// What pulls it down the slope at a speed.
double downhill_N(const PlateForce& f, double mass, double slope, double friction) {
    return mass * gravity * std::sin(slope) - f.drag_N -
           friction * std::max(mass * gravity * std::cos(slope) - f.lift_N, 0.0);
}

/// Way and speed after a time under gravity and a drag that stays in proportion to the speed.
std::pair<double, double> braked(double v, double per_s, double h) {
    const double x = per_s * h;
    const double once = x < 1e-5 ? h * (1 - x / 2) : -std::expm1(-x) / per_s, // int of exp(-ct)
        twice = x < 1e-5 ? h * h * (0.5 - x / 6) : (h - once) / per_s;
    return {v * once + gravity * twice, v * std::exp(-x) + gravity * once};
}

} // namespace

Slide slide(const ForceAtSpeed& force, double peak, double mass, double slope, double friction) {
    const double slowest = 1e-9 * peak;
    if (downhill_N(force(slowest), mass, slope, friction) <= 0) return {std::nullopt, true};
    double low = std::log(slowest), high = std::log(peak);
    if (downhill_N(force(peak), mass, slope, friction) > 0) return {};
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (downhill_N(force(std::exp(middle)), mass, slope, friction) > 0 ? low : high) = middle;
    }
    return {std::exp((low + high) / 2), false};
}

Swing swing(const ForceAtSpeed& force, double mass, double length, double amplitude) {
    constexpr int steps = 200, most_swings = 2000; // of a period
    constexpr double rest = 0.01;
    const double omega2 = gravity / length, period = 2 * std::numbers::pi / std::sqrt(omega2), h = period / steps;
    const double fastest = amplitude * std::sqrt(omega2);
    // The drag at some speeds, straight between: the motion asks for it very often.
    constexpr std::size_t knots = 64;
    std::vector<double> drag = {0};
    for (std::size_t i = 1; i <= knots; ++i)
        drag.push_back(force(fastest * static_cast<double>(i) / knots).drag_N / mass);
    const auto pull = [&](double s, double v) {
        const double at = std::min(std::abs(v) / fastest, 1.0) * knots;
        const auto k = std::min(static_cast<std::size_t>(at), knots - 1);
        const double braking = drag[k] + (at - static_cast<double>(k)) * (drag[k + 1] - drag[k]);
        return -omega2 * s - (v > 0 ? braking : -braking);
    };
    Swing out;
    out.period_s = period;
    double s = amplitude, v = 0, highest = amplitude;
    for (int i = 0; i < most_swings * steps; ++i) {
        const double a1 = pull(s, v), a2 = pull(s + h / 2 * v, v + h / 2 * a1),
                     a3 = pull(s + h / 2 * (v + h / 2 * a1), v + h / 2 * a2),
                     a4 = pull(s + h * (v + h / 2 * a2), v + h * a3);
        const double before = v;
        s += h * v + h * h / 6 * (a1 + a2 + a3);
        v += h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
        if (before * v < 0) { // it turns: half a swing
            const double turned = std::abs(s), swings = (i + 1) * h / period;
            if (!out.half_after && turned <= amplitude / 2 && highest > amplitude / 2)
                out.half_after = swings - 0.5 * std::log(amplitude / 2 / turned) / std::log(highest / turned);
            highest = turned;
        }
        if (std::hypot(s, v / std::sqrt(omega2)) < rest * amplitude) {
            out.rest_s = (i + 1) * h;
            return out;
        }
    }
    out.rest_s = INFINITY;
    return out;
}

double block_drag_N_s_m(const Magnet& m, double moment, const Block& block, double height) {
    const double remanence = vacuum_permeability * moment / m.volume_m3();
    const auto in_depth = [&](double z) {
        const double scale = z; // the field spreads as far as the depth
        const auto across = [&](double t) {
            const double r = scale * std::expm1(t), field = r > 0 ? radial_field_over_remanence(m, r, z) : 0;
            return r * field * field * scale * std::exp(t);
        };
        const double end = std::log1p(block.radius_m / scale);
        return integral<16>(across, 0, end / 2) + integral<16>(across, end / 2, end);
    };
    // From the surface down in stretches that grow with the distance from the magnet's face.
    const double gap = std::max(height - half_extent_m(m, MomentAxis::normal), 1e-6 * height);
    double sum = 0, low = 0, step = std::max(gap, 0.05 * m.outer_radius_m);
    while (low < block.thickness_m && low < 200 * height) {
        const double high = std::min(low + step, block.thickness_m);
        sum += integral<8>([&](double depth) { return in_depth(height + depth); }, low, high);
        low = high;
        step *= 1.6;
    }
    return 2 * std::numbers::pi * block.conductivity_S_m * remanence * remanence * sum;
}

BlockFall fall_on_block(const Magnet& m, double moment, double mass, const Block& block, double gap) {
    const double half = half_extent_m(m, MomentAxis::normal);
    // ln of the coefficient against ln of the height, straight between knots that crowd near the block.
    constexpr std::size_t knots = 60;
    std::vector<double> heights, ln_drag;
    for (std::size_t i = 0; i <= knots; ++i) {
        const double t = static_cast<double>(i) / knots;
        heights.push_back(half + gap * t * t + 1e-7 * half);
        ln_drag.push_back(std::log(block_drag_N_s_m(m, moment, block, heights.back()) / mass));
    }
    const auto coefficient = [&](double height) {
        const auto after = std::clamp(std::upper_bound(heights.begin(), heights.end(), height) - heights.begin(),
                                      std::ptrdiff_t{1}, static_cast<std::ptrdiff_t>(knots));
        const auto k = static_cast<std::size_t>(after);
        const double t = std::log(height / heights[k - 1]) / std::log(heights[k] / heights[k - 1]);
        return std::exp(ln_drag[k - 1] + t * (ln_drag[k] - ln_drag[k - 1]));
    };
    BlockFall out;
    out.free_fall_s = std::sqrt(2 * gap / gravity);
    double z = half + gap, v = 0, t = 0; // v downwards
    while (z > half && t < 1e5) {
        const double tau = 1 / coefficient(z), near = std::max(z - half, 1e-3 * gap), at_most = 0.01 * out.free_fall_s;
        const double h = std::min(0.02 * near / std::max(v, 1e-9), tau < at_most ? 100 * at_most : at_most);
        const auto [way, faster] = braked(v, coefficient(std::max(z - h / 2 * v, half)), h);
        if (way >= z - half) {
            out.time_s = t + h * (z - half) / way;
            out.touch_m_s = faster;
            break;
        }
        z -= way;
        v = faster;
        t += h;
    }
    if (out.time_s == 0) out.time_s = t;
    out.fading_s = vacuum_permeability * block.conductivity_S_m *
                   std::pow(std::min({half * 2, block.thickness_m, block.radius_m}), 2) / 4;
    out.slow = out.fading_s < out.time_s / 20;
    return out;
}

} // namespace pourbook::eddy

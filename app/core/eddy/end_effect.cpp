#include "core/eddy/end_effect.hpp"

#include "core/eddy/elliptic.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

double sheet_field(double R, double half_length, double r, double z) {
    return loop_potential(R, r, z - half_length) - loop_potential(R, r, z + half_length);
}

/// int_a^b r B_r^2 dr, with points crowded where the wall is near the magnet.
double wall_density(const Magnet& magnet, const Bore& bore, double z) {
    const double source = magnet.source_radius_m(), gap = bore.inner_radius_m - source;
    const auto integrand = [&](double t) {
        const double r = source + gap * std::exp(t), field = radial_field_over_remanence(magnet, r, z);
        return r * field * field * (r - source);
    };
    return integral<12>(integrand, 0, std::log((bore.outer_radius_m - source) / gap));
}

double piece_field(const Magnet& m, double r, double z) {
    if (m.shape == Shape::sphere) return std::pow(m.outer_radius_m, 3) * r * z / std::pow(r * r + z * z, 2.5);
    return over_sheets(m, [&](double radius) { return sheet_field(radius, m.length_m / 2, r, z); });
}

/// Where the sources end along the axis, on one side of the middle.
std::vector<double> pole_faces(const Magnet& m) {
    const double half = m.shape == Shape::sphere ? 0 : m.length_m / 2;
    std::vector<double> faces;
    for (int i = 0; i < m.stack.pieces; ++i)
        for (const double face : {m.place_m(i) - half, m.place_m(i) + half})
            if (face >= 0) faces.push_back(face);
    std::sort(faces.begin(), faces.end());
    return faces;
}

} // namespace

double loop_potential(double R, double r, double z) {
    const double k2 = 4 * R * r / ((R + r) * (R + r) + z * z), k = std::sqrt(k2);
    const auto [first, second] = complete_elliptic(k);
    return std::sqrt(R / r) / (std::numbers::pi * k) * ((1 - k2 / 2) * first - second);
}

double radial_field_over_remanence(const Magnet& m, double r, double z) {
    double sum = 0;
    for (int i = 0; i < m.stack.pieces; ++i) sum += m.sign(i) * piece_field(m, r, z - m.place_m(i));
    return sum;
}

EndEffect::EndEffect(const Magnet& magnet, const Bore& bore) {
    constexpr double fineness = 0.09;
    const double gap = bore.inner_radius_m - magnet.source_radius_m();
    const double end = magnet.half_length_m() + 15 * bore.outer_radius_m;
    const std::vector<double> faces = pole_faces(magnet);
    const auto density = [&](double z) { return wall_density(magnet, bore, z); };
    double sum = 0;
    knots_.push_back({0, 0, density(0)});
    for (double z = 0; z < end;) {
        const auto after = std::upper_bound(faces.begin(), faces.end(), z);
        double nearest = after == faces.end() ? INFINITY : *after - z;
        if (after != faces.begin()) nearest = std::min(nearest, z - *(after - 1));
        const double step = fineness * std::max(gap, nearest);
        const double next = after != faces.end() && z + step > *after ? *after : z + step;
        sum += integral<5>(density, z, next);
        knots_.push_back({next, sum, density(next)});
        z = next;
    }
    whole_ = 2 * sum;
    for (Knot& k : knots_) {
        k.inside /= whole_;
        k.density /= whole_;
        if (reach_ == 0 && k.inside > 0.5 - 1e-4) reach_ = k.z;
    }
}

const EndEffect::Knot* EndEffect::below(double z) const {
    const auto next =
        std::upper_bound(knots_.begin(), knots_.end(), z, [](double value, const Knot& k) { return value < k.z; });
    return next == knots_.end() ? nullptr : &*(next - 1);
}

double EndEffect::share(double depth) const {
    const double z = std::abs(depth);
    const Knot* k = below(z);
    double inside = 0.5;
    if (k) { // cubic through values and slopes at both knots
        const Knot& n = *(k + 1);
        const double h = n.z - k->z, t = (z - k->z) / h, s = 1 - t;
        inside = k->inside * s * s * (1 + 2 * t) + n.inside * t * t * (1 + 2 * s) +
                 h * s * t * (k->density * s - n.density * t);
    }
    return depth >= 0 ? 0.5 + inside : 0.5 - inside;
}

double EndEffect::slope_per_m(double depth) const {
    const double z = std::abs(depth);
    const Knot* k = below(z);
    if (!k) return 0;
    const Knot& n = *(k + 1);
    const double h = n.z - k->z, t = (z - k->z) / h;
    return 6 * t * (1 - t) * (n.inside - k->inside) / h + k->density * (1 - t) * (1 - 3 * t) -
           n.density * t * (2 - 3 * t);
}

} // namespace pourbook::eddy

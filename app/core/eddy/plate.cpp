#include "core/eddy/plate.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/magnet.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;

/// Reflection of a component of wave number q/h moving at cosine c; u = mu0 sigma v h, w = thickness over height.
Complex reflection(double q, double c, double u, double w) {
    const Complex excess(0, u * q * c), g = std::sqrt(q * q + excess);
    const Complex fading = std::exp(-2.0 * g * w), t = (1.0 - fading) / (1.0 + fading);
    return excess * t / ((2 * q * q + excess) * t + 2.0 * g * q);
}

struct Mean {
    double lift = 0, drag = 0;
};

/// Mean over the directions of the components; by symmetry a quarter turn serves.
Mean over_directions(double q, double u, double w, MomentAxis axis) {
    constexpr int points = 32;
    Mean mean;
    const GaussRule<points>& rule = gauss_rule<points>();
    for (std::size_t i = 0; i < points; ++i) {
        const double s = (rule.node[i] + 1) / 2,
                     turn = pi / 2 * (1 - s * s); // crowded where the component hardly moves
        const double c = std::cos(turn), share = axis == MomentAxis::normal ? 1 : c * c;
        const Complex r = reflection(q, c, u, w);
        const double weight = rule.weight[i] * s * share; // (2/pi) (pi/2) 2 s ds, ds = half the rule's
        mean.lift += weight * r.real();
        mean.drag += weight * r.imag() * c;
    }
    return mean;
}

double standing_disc(double k, double radius) {
    const double x = k * radius;
    return x < 1e-4 ? 1 : 2 * bessel_j1(x) / x;
}

/// exp(-kL/2) S(k) of a magnet that stands on the plate's normal; 1 for a sphere.
double faded_spectrum(const Magnet& m, double k) {
    if (m.shape == Shape::sphere) return 1;
    const double y = k * m.length_m / 2;
    const double along = y < 1e-6 ? 1 : -std::expm1(-2 * y) / (2 * y);
    if (m.shape == Shape::cylinder) return standing_disc(k, m.outer_radius_m) * along;
    const double R2 = m.outer_radius_m * m.outer_radius_m, r2 = m.inner_radius_m * m.inner_radius_m;
    return (R2 * standing_disc(k, m.outer_radius_m) - r2 * standing_disc(k, m.inner_radius_m)) / (R2 - r2) * along;
}

std::optional<Problem> fault(const Plate& plate, const Magnet& magnet, MomentAxis axis, double height, double speed) {
    const auto refused = [](const char* text) { return Problem{Problem::Kind::refused, text, 0}; };
    if (!(plate.conductivity_S_m > 0 && plate.thickness_m > 0 && height > 0 && speed >= 0))
        return refused("a plate needs a conductivity, a thickness, a height and a speed above zero");
    if (!(height > half_extent_m(magnet, axis)))
        return refused("the magnet reaches into the plate: the height is that of its centre above the surface");
    const double half_diagonal = std::hypot(magnet.outer_radius_m, magnet.half_length_m());
    if (axis == MomentAxis::along_motion && magnet.shape != Shape::sphere && height < 2 * half_diagonal)
        return refused("a cylinder or ring that lies along the motion is computed as a dipole, from a height of its "
                       "whole diagonal: raise it, or let it stand (--axis normal)");
    return std::nullopt;
}

} // namespace

double half_extent_m(const Magnet& m, MomentAxis axis) {
    return m.shape == Shape::sphere || axis == MomentAxis::along_motion ? m.outer_radius_m : m.length_m / 2;
}

Result<PlateForce> plate_force(const Plate& plate, const Magnet& magnet, double moment, MomentAxis axis, double height,
                               double speed) {
    if (const auto problem = fault(plate, magnet, axis, height, speed)) return *problem;
    const double u = vacuum_permeability * plate.conductivity_S_m * speed * height, w = plate.thickness_m / height;
    const bool standing = axis == MomentAxis::normal && magnet.shape != Shape::sphere;
    const double near = standing ? magnet.half_length_m() / height : 0; // of its lower face
    Mean sum;
    const auto add = [&](double low, double high) {
        const GaussRule<16>& rule = gauss_rule<16>();
        for (std::size_t i = 0; i < 16; ++i) {
            const double q = (low + high) / 2 + (high - low) / 2 * rule.node[i];
            const double s = standing ? faded_spectrum(magnet, q / height) : 1;
            const double weight = (high - low) / 2 * rule.weight[i] * q * q * q * s * s * std::exp(-2 * q * (1 - near));
            const Mean mean = over_directions(q, u, w, axis);
            sum.lift += weight * mean.lift;
            sum.drag += weight * mean.drag;
        }
    };
    double high = 0.25;
    for (int i = 0; i < 12; ++i, high /= 4) add(high / 4, high); // slow waves turn over at small q
    const double far = 20 / (1 - near), lobe = standing ? pi * height / magnet.outer_radius_m : far;
    for (double low = 0.25, step = std::min(0.25, lobe); low < far; low += step, step = std::min(2 * step, lobe))
        add(low, low + step);
    const double unit = vacuum_permeability * moment * moment / (4 * pi * std::pow(height, 4));
    return PlateForce{unit * sum.drag, unit * sum.lift};
}

} // namespace pourbook::eddy

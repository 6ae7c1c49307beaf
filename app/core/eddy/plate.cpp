#include "core/eddy/plate.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/magnet.hpp"
#include "core/eddy/quadrature.hpp"

#include <cmath>
#include <numbers>

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

} // namespace

Result<PlateForce> plate_force(const Plate& plate, double moment, MomentAxis axis, double height, double speed) {
    if (!(plate.conductivity_S_m > 0 && plate.thickness_m > 0 && height > 0 && speed >= 0))
        return Problem{Problem::Kind::refused,
                       "a plate needs a conductivity, a thickness, a height and a speed above zero", 0};
    const double u = vacuum_permeability * plate.conductivity_S_m * speed * height, w = plate.thickness_m / height;
    Mean sum;
    const auto add = [&](double low, double high) {
        const GaussRule<16>& rule = gauss_rule<16>();
        for (std::size_t i = 0; i < 16; ++i) {
            const double q = (low + high) / 2 + (high - low) / 2 * rule.node[i];
            const double weight = (high - low) / 2 * rule.weight[i] * q * q * q * std::exp(-2 * q);
            const Mean mean = over_directions(q, u, w, axis);
            sum.lift += weight * mean.lift;
            sum.drag += weight * mean.drag;
        }
    };
    double high = 0.25;
    for (int i = 0; i < 12; ++i, high /= 4) add(high / 4, high); // slow waves turn over at small q
    for (double low = 0.25; low < 20; low *= 2) add(low, 2 * low);
    const double unit = vacuum_permeability * moment * moment / (4 * pi * std::pow(height, 4));
    return PlateForce{unit * sum.drag, unit * sum.lift};
}

} // namespace pourbook::eddy

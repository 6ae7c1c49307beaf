#include "core/eddy/magnet.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/elliptic.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;
constexpr double ratio_limit = 1000; // of lengths to each other; the work grows with it

/// exp(-x) 2 I1(x) / x.
double disc_factor(double x) {
    return x < 1e-9 ? std::exp(-x) : 2 * scaled_bessel(x).i1 / x;
}

double sinc(double x) {
    return std::abs(x) < 1e-6 ? 1 - x * x / 6 : std::sin(x) / x;
}

/// Mean axial field in a uniformly magnetised cylinder over mu0 M: Nagaoka's coefficient of its current sheet, by
/// complete elliptic integrals (Nagaoka, J. Coll. Sci. Tokyo 27, art. 6, 1909).
double nagaoka(double radius, double length) {
    const double diameter = 2 * radius, diagonal = std::hypot(diameter, length);
    const double k = diameter / diagonal, other = length / diagonal;
    const auto [first, second] = complete_elliptic(k);
    return 4 / (3 * pi * other) * ((other * other / (k * k)) * (first - second) + second - k);
}

/// Flux linkage of two coaxial current sheets of equal length, inner radius r < outer R, relative to r^2 at infinite
/// length: (2 L R / (pi r)) int sinc^2(kL/2) I1(kr) K1(kR) dk. The integrand falls as exp(-k (R - r)) / k^3.
double sheet_linkage(double inner, double outer, double length) {
    const auto integrand = [&](double k) {
        const double s = sinc(k * length / 2);
        return s * s * scaled_bessel(k * inner).i1 * scaled_bessel(k * outer).k1 * std::exp(-k * (outer - inner));
    };
    const double end = std::min(25 / (outer - inner), 400 * (1 / length + 1 / outer));
    const double panel = std::min(3 / length, 1 / outer);
    double sum = 0;
    for (double low = 0; low < end; low += panel) sum += integral<8>(integrand, low, low + panel);
    return 2 * length * outer / (pi * inner) * sum;
}

/// Smallest and largest of the magnet's lengths, its wall among them.
std::pair<double, double> extremes(const Magnet& m) {
    if (m.shape != Shape::ring) return std::minmax({m.outer_radius_m, m.length_m});
    return std::minmax({m.outer_radius_m, m.inner_radius_m, m.outer_radius_m - m.inner_radius_m, m.length_m});
}

double cap_field(double radius, double length, double distance) {
    const double far = distance + length;
    return 0.5 * (far / std::hypot(far, radius) - distance / std::hypot(distance, radius));
}

/// exp(-k r) times the mean of I0(k r) over a cube's face.
double cube_section_factor(const Magnet& m, double k) {
    double sum = 0, area = 0;
    for (int i = 0; i < cube_cylinders; ++i) {
        const auto [radius, weight] = cube_cylinder(m, i);
        sum += weight * radius * radius * disc_factor(k * radius) * std::exp(-k * (m.outer_radius_m - radius));
        area += weight * radius * radius;
    }
    return sum / area;
}

double piece_factor(const Magnet& m, double k) {
    if (m.shape == Shape::sphere) return 1;
    const double outer = disc_factor(k * m.outer_radius_m), along = sinc(k * m.length_m / 2);
    if (m.shape == Shape::cylinder) return outer * along;
    if (m.shape == Shape::cube) return cube_section_factor(m, k) * along;
    const double R2 = m.outer_radius_m * m.outer_radius_m, r2 = m.inner_radius_m * m.inner_radius_m;
    const double inner = disc_factor(k * m.inner_radius_m) * std::exp(-k * (m.outer_radius_m - m.inner_radius_m));
    return (R2 * outer - r2 * inner) / (R2 - r2) * along;
}

double stack_factor(const Magnet& m, double k) {
    double along = 0, across = 0;
    for (int i = 0; i < m.stack.pieces; ++i) {
        along += m.sign(i) * std::cos(k * m.place_m(i));
        across += m.sign(i) * std::sin(k * m.place_m(i));
    }
    return std::hypot(along, across) / m.stack.pieces;
}

double piece_axial_field(const Magnet& m, double distance) {
    if (m.shape == Shape::sphere) return 2.0 / 3.0 * std::pow(m.outer_radius_m / (m.outer_radius_m + distance), 3);
    return over_sheets(m, [&](double radius) { return cap_field(radius, m.length_m, distance); });
}

} // namespace

double Magnet::volume_m3() const {
    if (shape == Shape::sphere) return stack.pieces * 4.0 / 3.0 * pi * std::pow(outer_radius_m, 3);
    if (shape == Shape::cube) return stack.pieces * 2 * outer_radius_m * outer_radius_m * length_m;
    return stack.pieces * pi * (outer_radius_m * outer_radius_m - inner_radius_m * inner_radius_m) * length_m;
}

Result<Magnet> checked(const Magnet& magnet) {
    const bool positive = magnet.outer_radius_m > 0 && magnet.length_m > 0 && magnet.inner_radius_m >= 0;
    if (!positive) return Problem{Problem::Kind::refused, "the magnet needs lengths above zero", 0};
    if (!(magnet.stack.pieces >= 1 && magnet.stack.pieces <= 20 && magnet.stack.gap_m >= 0))
        return Problem{Problem::Kind::refused, "a stack has 1 to 20 magnets, and gaps of nothing or more", 0};
    if (magnet.shape == Shape::ring && !(magnet.inner_radius_m > 0 && magnet.inner_radius_m < magnet.outer_radius_m))
        return Problem{Problem::Kind::refused, "the ring needs a hole smaller than itself: ring:ODxIDxL", 0};
    const auto [shortest, longest] = extremes(magnet);
    if (!(longest <= ratio_limit * shortest))
        return Problem{Problem::Kind::refused,
                       "the magnet's longest size is more than a thousand times its shortest: outside the model", 0};
    return magnet;
}

WeightedRadius cube_cylinder(const Magnet& cube, int which) {
    const GaussRule<cube_cylinders>& rule = gauss_rule<cube_cylinders>();
    const auto i = static_cast<std::size_t>(which);
    const double turn = pi / 8 * (1 + rule.node[i]); // from the middle of a side face to its edge
    return {cube.outer_radius_m / std::numbers::sqrt2 / std::cos(turn), rule.weight[i] / 2};
}

double scaled_form_factor(const Magnet& m, double k) {
    return m.stack.pieces == 1 ? piece_factor(m, k) : piece_factor(m, k) * stack_factor(m, k);
}

double demagnetising_factor(const Magnet& m) {
    if (m.shape == Shape::sphere || m.shape == Shape::cube) return 1.0 / 3.0;
    const double outer = nagaoka(m.outer_radius_m, m.length_m);
    if (m.shape == Shape::cylinder) return 1 - outer;
    const double R2 = m.outer_radius_m * m.outer_radius_m, r2 = m.inner_radius_m * m.inner_radius_m;
    const double inner = nagaoka(m.inner_radius_m, m.length_m);
    const double mutual = sheet_linkage(m.inner_radius_m, m.outer_radius_m, m.length_m);
    return 1 - (R2 * outer + r2 * inner - 2 * r2 * mutual) / (R2 - r2);
}

double moment_A_m2(const Magnet& m, double remanence_T, double recoil_permeability) {
    const double weaker = recoil_permeability == 1 ? 1 : 1 + demagnetising_factor(m) * (recoil_permeability - 1);
    return remanence_T * m.volume_m3() / vacuum_permeability / weaker;
}

double axial_field_over_remanence(const Magnet& m, double distance_m) {
    double sum = 0;
    for (int i = 0; i < m.stack.pieces; ++i) sum += m.sign(i) * piece_axial_field(m, distance_m + i * m.pitch_m());
    return sum;
}

} // namespace pourbook::eddy

#include "core/eddy/thin_wall.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;

/// A magnet as the wall sees it: exp(-2 x R/a) S(x/a)^2 on the scale of the wall.
struct Source {
    const Magnet& magnet;
    double wall_radius_m;
    double reach() const { return magnet.source_radius_m() / wall_radius_m; }
    double strength(double x) const {
        const double s = scaled_form_factor(magnet, x / wall_radius_m);
        return s * s;
    }
    /// Sum over x of an integrand that falls as exp(-2 x (1 - nearest)).
    template <class F> double summed(F integrand, double nearest) const {
        // Panels short enough for the lobes of a long magnet's spectrum.
        const double lobe = magnet.half_length_m() > 0 ? pi * wall_radius_m / magnet.half_length_m() : 1e9;
        const double far = 20 / (1 - nearest);
        double sum = 0;
        for (double low = 0, step = std::min(0.5, lobe); low < far; low += step, step = std::min(step * 1.5, lobe))
            sum += integral<16>(integrand, low, low + step);
        return sum;
    }
    double whole() const {
        return summed(
            [this](double x) {
                const double k1 = scaled_bessel(x).k1;
                return std::pow(x, 4) * strength(x) * k1 * k1 * std::exp(-2 * x * (1 - reach()));
            },
            reach());
    }
};

/// exp(-y) I_m(y) for m = 0..last, by backward recurrence.
std::vector<double> scaled_i(double y, int last) {
    std::vector<double> value(static_cast<std::size_t>(last) + 1);
    double above = 0, here = 1e-250;
    for (int m = last + 30 + static_cast<int>(y); m > 0; --m) {
        if (m <= last) value[static_cast<std::size_t>(m)] = here;
        const double below = above + 2 * m / y * here;
        above = here;
        here = below;
        if (here > 1e200) { // keep clear of overflow
            here *= 1e-200;
            above *= 1e-200;
            for (double& v : value) v *= 1e-200;
        }
    }
    const double norm = scaled_bessel(y).i0 / here;
    value[0] = here;
    for (double& v : value) v *= norm;
    return value;
}

/// exp(x) K_m'(x) for m = 0..last, by forward recurrence.
std::vector<double> scaled_k_slope(double x, int last) {
    const RealScaledBessel b = scaled_bessel(x);
    std::vector<double> k = {b.k0, b.k1};
    for (int m = 1; m <= last; ++m)
        k.push_back(k[static_cast<std::size_t>(m) - 1] + 2 * m / x * k[static_cast<std::size_t>(m)]);
    std::vector<double> slope = {-b.k1};
    for (std::size_t m = 1; m <= static_cast<std::size_t>(last); ++m) slope.push_back(-(k[m - 1] + k[m + 1]) / 2);
    return slope;
}

/// int x^4 S^2 (I_m K_m')^2 x^2/(x^2 + m^2) dx, summed over the orders m, with the magnet at `offset` of the shell's
/// radius.
double displaced(const Source& source, double offset) {
    const auto braked = [&](double x) {
        // The orders fall as exp(-m^2 (1/(x d) - 1/x)) for large x, as offset^(2m) for small.
        const int last = 60 + static_cast<int>(std::sqrt(30 * x * offset / (1 - offset)));
        const auto i = scaled_i(x * offset, last), k = scaled_k_slope(x, last);
        double total = 0;
        for (std::size_t m = 0; m <= static_cast<std::size_t>(last); ++m) {
            const double product = i[m] * k[m], order = static_cast<double>(m);
            if (!std::isfinite(product)) break; // I underflows where K overflows, far beyond the terms that count
            total += (m == 0 ? 1 : 2) * product * product * x * x / (x * x + order * order);
        }
        return std::pow(x, 4) * source.strength(x) * total * std::exp(-2 * x * (1 - offset - source.reach()));
    };
    return source.summed(braked, offset + source.reach());
}

} // namespace

double slit_drag(const Slits& slits, const Magnet& magnet, double wall_radius_m) {
    if (slits.count < 1) return 1;
    const Source source{magnet, wall_radius_m};
    const double sector = 2 * pi / slits.count, gap = slits.width_m / wall_radius_m,
                 seam = slits.seam_m / wall_radius_m;
    const auto kept = [&](double x) {
        const double t = x * (sector - gap) / 2, bent = std::tanh(t),
                     edge = std::isinf(seam) ? 1 : x * (seam - gap) / (2 * bent + x * seam);
        return ((sector - gap) * (1 - edge * bent / t) + gap * (1 - edge)) / sector;
    };
    const auto left = [&](double x) {
        const double k1 = scaled_bessel(x).k1;
        return std::pow(x, 4) * source.strength(x) * k1 * k1 * std::exp(-2 * x * (1 - source.reach())) * kept(x);
    };
    return source.summed(left, source.reach()) / source.whole();
}

double furthest_off_axis_m(const Magnet& magnet, const Bore& bore) {
    return std::min(0.6 * bore.inner_radius_m, 0.9 * (bore.inner_radius_m - magnet.outer_radius_m));
}

Result<double> off_axis_drag(double distance, const Magnet& magnet, const Bore& bore) {
    const double a = bore.inner_radius_m;
    if (!(distance >= 0 && distance <= 0.6 * a))
        return Problem{Problem::Kind::refused, "off-axis drag is known for offsets from 0 to 0.6 of the bore radius",
                       0};
    if (distance > furthest_off_axis_m(magnet, bore) * (1 + 1e-9))
        return Problem{Problem::Kind::refused,
                       "off-axis travel: the magnet would come within a tenth of its clearance to the wall, where it "
                       "rubs: give a smaller distance from the axis",
                       0};
    if (distance < 1e-6 * a) return 1.0;
    constexpr int shells = 3;
    double braked = 0, whole = 0;
    const double end = std::log(bore.outer_radius_m / a);
    const GaussRule<shells>& rule = gauss_rule<shells>();
    for (std::size_t i = 0; i < shells; ++i) {
        const double r = a * std::exp(end * (1 + rule.node[i]) / 2), weight = rule.weight[i] / (r * r * r);
        const Source shell{magnet, r};
        braked += weight * displaced(shell, distance / r);
        whole += weight * shell.whole();
    }
    return braked / whole;
}

} // namespace pourbook::eddy

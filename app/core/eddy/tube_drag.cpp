#include "core/eddy/tube_drag.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;
constexpr int order = 12;           // Gauss points a panel
constexpr double panel_phase = 14;  // phase of sin^2 that one panel holds
constexpr double first_panel = 0.5; // in x
constexpr double graded_above =
    0.5; // above this u the first panel is split geometrically: Im C then turns over at small x
constexpr int graded_panels = 16;        // each four times the one before, down to 1e-10
constexpr double turn_over = 1e-3;       // below x = turn_over / u the integrand has fallen to nothing
constexpr double linear_below = 1e-5;    // below this u the force is linear to 1e-9, and Im C is lost in rounding
constexpr double slender_limit = 60;     // longest magnet, in bore radii
constexpr double clearance_limit = 2e-3; // smallest gap between magnet and wall, in bore radii

/// int_1^ratio r K1(x r)^2 dr, times exp(2x).
double wall_weight(double x, double ratio) {
    const auto antiderivative = [x](double r) {
        const RealScaledBessel b = scaled_bessel(x * r);
        return r * r / 2 * (b.k1 * b.k1 - b.k0 * b.k0 - 2 * b.k0 * b.k1 / (x * r));
    };
    if (x * (ratio - 1) > 0.1) return antiderivative(ratio) * std::exp(-2 * x * (ratio - 1)) - antiderivative(1);
    return integral<8>( // the difference above cancels for a thin wall
        [x](double r) {
            const double k1 = scaled_bessel(x * r).k1;
            return r * k1 * k1 * std::exp(-2 * x * (r - 1));
        },
        1, ratio);
}

} // namespace

Result<Bore> checked(const Bore& bore, const Magnet& magnet) {
    const double a = bore.inner_radius_m, b = bore.outer_radius_m;
    if (!(a > 0 && b > a))
        return refused("the tube needs a bore above zero and an outer diameter above the bore: --tube ID:OD:LENGTH");
    if (magnet.outer_radius_m >= a) return refused("the magnet is as wide as the bore or wider: it can't fall through");
    if (b < a * (1 + 1e-6) || b > 1e4 * a)
        return refused("the wall must be between a millionth of the bore radius and ten thousand of it");
    if (magnet.outer_radius_m > a * (1 - clearance_limit))
        return refused("the gap between magnet and wall is below 0.2 % of the bore radius: the magnet would rub, and "
                       "this is outside the model");
    if (magnet.half_length_m() * 2 > slender_limit * a)
        return refused("the magnet is longer than 60 bore radii: outside the model");
    return bore;
}

TubeDrag::TubeDrag(const Magnet& magnet, const Bore& bore) : TubeDrag(magnet, bore, Speeds::any) {}

double TubeDrag::low_speed_of(const Magnet& magnet, const Bore& bore) {
    return TubeDrag(magnet, bore, Speeds::low).low_speed();
}

TubeDrag::TubeDrag(const Magnet& magnet, const Bore& bore, Speeds speeds)
    : bore_radius_m_(bore.inner_radius_m), ratio_(bore.outer_radius_m / bore.inner_radius_m) {
    const double source = magnet.source_radius_m() / bore_radius_m_,
                 length = 2 * magnet.half_length_m() / bore_radius_m_;
    const double end = (15 - 8 * source) / (1 - source); // the integrand falls as exp(-2x (1 - source))
    const double widest = length > 0 ? panel_phase / length : end, first = std::min(first_panel, widest);
    add_panel(coarse_, magnet, 0, first);
    double high = first;
    for (int i = 0; speeds == Speeds::any && i < graded_panels; ++i, high /= 4)
        add_panel(graded_, magnet, high / 4, high);
    for (double low = first; low < end; low = high) {
        high = std::min({end, low + widest, 2 * low + first});
        add_panel(rest_, magnet, low, high);
    }
    for (const auto* nodes : {&coarse_, &rest_})
        for (const Node& n : *nodes) low_speed_ += n.weight * n.x * wall_weight(n.x, ratio_);
}

void TubeDrag::add_panel(std::vector<Node>& nodes, const Magnet& magnet, double low, double high) const {
    const GaussRule<order>& rule = gauss_rule<order>();
    const double source = magnet.source_radius_m() / bore_radius_m_;
    for (std::size_t i = 0; i < order; ++i) {
        const double x = (low + high) / 2 + (high - low) / 2 * rule.node[i];
        const double s = scaled_form_factor(magnet, x / bore_radius_m_);
        const RealScaledBessel inner = scaled_bessel(x), outer = scaled_bessel(x * ratio_);
        const double weight = (high - low) / 2 * rule.weight[i] * x * x * x * s * s * std::exp(-2 * x * (1 - source));
        nodes.push_back({x, weight, inner.i0, inner.i1, inner.k0, inner.k1, -x * outer.k0 / outer.k1});
    }
}

/// Im C exp(2x) of one harmonic.
double TubeDrag::reflected(const Node& n, double u) const {
    const Complex y = std::sqrt(Complex(n.x * n.x, -u * n.x));
    const ScaledBessel in = scaled_bessel(y), out = scaled_bessel(y * ratio_);
    const Complex back =
        (y * out.k0 + n.outside * out.k1) / (y * out.i0 - n.outside * out.i1) * std::exp(-2.0 * y * (ratio_ - 1));
    const Complex slope = y * (back * in.i0 - in.k0), value = back * in.i1 + in.k1;
    return std::imag((slope * n.k1 + n.x * n.k0 * value) / (n.x * n.i0 * value - slope * n.i1));
}

double TubeDrag::force(double u) const {
    if (u < linear_below) return u * low_speed_;
    double sum = 0;
    for (const Node& n : rest_) sum += n.weight * reflected(n, u);
    if (u <= graded_above) {
        for (const Node& n : coarse_) sum += n.weight * reflected(n, u);
    } else {
        for (const Node& n : graded_)
            if (n.x > turn_over / u) sum += n.weight * reflected(n, u);
    }
    return sum;
}

double TubeDrag::coefficient_N_s_m(double moment, double conductivity) const {
    const double mu0m = vacuum_permeability * moment;
    return mu0m * mu0m * conductivity / (2 * pi * pi * std::pow(bore_radius_m_, 3)) * low_speed_;
}

double TubeDrag::force_N(double moment, double conductivity, double speed) const {
    return vacuum_permeability * moment * moment / (2 * pi * pi * std::pow(bore_radius_m_, 4)) *
           force(vacuum_permeability * conductivity * speed * bore_radius_m_);
}

} // namespace pourbook::eddy

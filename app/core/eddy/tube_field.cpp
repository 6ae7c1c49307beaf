#include "core/eddy/tube_field.hpp"

#include "core/eddy/bessel.hpp"
#include "core/eddy/end_effect.hpp"
#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;

/// A of a current sheet of 1 T over mu0; the integrand peaks beside the place, where the sheet is split.
double sheet_potential(double R, double half_length, double r, double z) {
    const auto loop = [&](double at) { return loop_potential(R, r, z - at); };
    if (!(std::abs(z) < half_length)) return integral<16>(loop, -half_length, half_length);
    return integral<16>(loop, -half_length, z) + integral<16>(loop, z, half_length);
}

double piece_potential(const Magnet& m, double r, double z) {
    if (m.shape == Shape::sphere) {
        const double from = std::hypot(r, z) / m.outer_radius_m;
        return r / 3 / (from > 1 ? from * from * from : 1);
    }
    return over_sheets(m, [&](double radius) { return sheet_potential(radius, m.length_m / 2, r, z); });
}

/// One axial harmonic of the currents' field, with the exponentials kept apart until they can't overflow.
class Harmonic {
public:
    Harmonic(const Magnet& magnet, const Bore& bore, double q, double quadrature_weight, double mu0_sigma_v)
        : q_(q), a_(bore.inner_radius_m), b_(bore.outer_radius_m), source_(magnet.source_radius_m()),
          lambda_(std::sqrt(Complex(q * q, -mu0_sigma_v * q))) {
        Magnet one = magnet;
        one.stack = {};
        Complex pieces = 0;
        for (int i = 0; i < magnet.stack.pieces; ++i)
            pieces += magnet.sign(i) * std::exp(Complex(0, -q * magnet.place_m(i)));
        weight_ = quadrature_weight * one.volume_m3() / (2 * pi * pi) * q * scaled_form_factor(one, q) * pieces;
        solve();
    }

    double q() const { return q_; }

    /// Times exp(iqz) and the remanence: A at this radius.
    Complex at(double r) const { return weight_ * shape(r); }

private:
    /// The field continuous with its slope at both faces, as TubeDrag has it.
    void solve() {
        const double x = q_ * a_;
        const Complex y = lambda_ * a_;
        const RealScaledBessel inside = scaled_bessel(x), beyond = scaled_bessel(q_ * b_);
        const ScaledBessel in = scaled_bessel(y), out = scaled_bessel(lambda_ * b_);
        const double outside = -x * beyond.k0 / beyond.k1;
        back_ = (y * out.k0 + outside * out.k1) / (y * out.i0 - outside * out.i1);
        const Complex back = back_ * std::exp(-2.0 * lambda_ * (b_ - a_));
        const Complex slope = y * (back * in.i0 - in.k0), value = back * in.i1 + in.k1;
        reflected_ = (slope * inside.k1 + x * inside.k0 * value) / (x * inside.i0 * value - slope * inside.i1);
        wall_ = (inside.k1 + reflected_ * inside.i1) / value;
    }

    Complex in_wall(double r) const {
        const ScaledBessel here = scaled_bessel(lambda_ * r);
        return wall_ *
               (here.k1 * std::exp(-lambda_ * (r - a_)) + back_ * here.i1 * std::exp(lambda_ * (r + a_ - 2 * b_))) *
               std::exp(q_ * (source_ - a_));
    }

    Complex shape(double r) const {
        const RealScaledBessel here = scaled_bessel(q_ * r);
        if (r <= a_) return reflected_ * here.i1 * std::exp(q_ * (source_ + r - 2 * a_));
        const double own = here.k1 * std::exp(q_ * (source_ - r));
        if (r <= b_) return in_wall(r) - own;
        return in_wall(b_) * (here.k1 / scaled_bessel(q_ * b_).k1) * std::exp(-q_ * (r - b_)) - own;
    }

    double q_, a_, b_, source_;
    Complex lambda_, weight_, back_, reflected_, wall_;
};

std::vector<Harmonic> harmonics_of(const Magnet& magnet, const Bore& bore, double mu0_sigma_v) {
    constexpr int points = 12, slow_panels = 10;
    constexpr double decayed = 16, phase = 14, first = 0.5; // exp(-16); of a panel; in q a
    const double a = bore.inner_radius_m, end = decayed / (1 - magnet.source_radius_m() / a);
    const double widest = phase / (8 + 2 * magnet.half_length_m() / a);
    const GaussRule<points>& rule = gauss_rule<points>();
    std::vector<Harmonic> out;
    const auto add_panel = [&](double low, double high) {
        for (std::size_t i = 0; i < points; ++i)
            out.emplace_back(magnet, bore, ((low + high) / 2 + (high - low) / 2 * rule.node[i]) / a,
                             (high - low) / 2 * rule.weight[i] / a, mu0_sigma_v);
    };
    double high = first;
    for (int i = 0; i < slow_panels; ++i, high /= 4) add_panel(high / 4, high); // at speed slow waves turn over
    for (double low = first; low < end; low = high) {
        high = std::min({end, low + widest, 2 * low});
        add_panel(low, high);
    }
    return out;
}

} // namespace

double potential_over_remanence(const Magnet& m, double r, double z) {
    double sum = 0;
    for (int i = 0; i < m.stack.pieces; ++i) sum += m.sign(i) * piece_potential(m, r, z - m.place_m(i));
    return sum;
}

FieldGrid tube_field(const Magnet& magnet, const Bore& bore, double conductivity, double speed, double remanence,
                     std::vector<double> r_m, std::vector<double> z_m) {
    const std::vector<Harmonic> harmonics = harmonics_of(magnet, bore, vacuum_permeability * conductivity * speed);
    std::vector<Complex> waves; // exp(iqz), place by place
    for (const double z : z_m)
        for (const Harmonic& h : harmonics) waves.push_back(std::exp(Complex(0, h.q() * z)));
    FieldGrid out{std::move(r_m), std::move(z_m), {}, {}};
    const std::size_t radii = out.r_m.size(), count = harmonics.size();
    out.flux_T_m2.resize(radii * out.z_m.size());
    out.current_A_m2.resize(radii * out.z_m.size());
    for (std::size_t i = 0; i < radii; ++i) {
        const double r = out.r_m[i];
        const bool wall = r >= bore.inner_radius_m && r <= bore.outer_radius_m;
        std::vector<Complex> shapes;
        for (const Harmonic& h : harmonics) shapes.push_back(h.at(r));
        for (std::size_t j = 0; j < out.z_m.size(); ++j) {
            double potential = potential_over_remanence(magnet, r, out.z_m[j]), slope = 0;
            for (std::size_t k = 0; k < count; ++k) {
                const Complex term = shapes[k] * waves[j * count + k];
                potential += term.real();
                slope -= harmonics[k].q() * term.imag();
            }
            out.flux_T_m2[j * radii + i] = remanence * r * potential;
            if (wall)
                out.current_A_m2[j * radii + i] =
                    conductivity * speed * remanence * (slope - radial_field_over_remanence(magnet, r, out.z_m[j]));
        }
    }
    return out;
}

} // namespace pourbook::eddy

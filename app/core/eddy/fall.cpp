#include "core/eddy/fall.hpp"

#include "core/eddy/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr double tolerance = 3e-7;
constexpr double settled = 5e-6;            // acceleration over g, above the noise that the tolerance leaves
constexpr double slow = 0.02;               // v^2 / (g a) below which the magnet keeps to its local terminal speed
constexpr double transient = 40;            // time constants until it does
constexpr double quasi_static_to_m_s = 1e6; // the equations hold far below the speed of light
constexpr double linear_enough = 1e-4;

struct State {
    double z, v;
    State operator+(const State& o) const { return {z + o.z, v + o.v}; }
    State operator*(double f) const { return {z * f, v * f}; }
};

class Motion {
public:
    Motion(const FallSetup& setup, bool with_path) : s_(setup), with_path_(with_path) {
        const double weight = s_.mass_kg * s_.gravity_m_s2 / s_.force_scale_N;
        if (const auto u = s_.curve->stable_balance(weight)) out_.terminal_speed_m_s = *u / s_.u_per_speed;
        if (with_path_)
            if (const auto u = s_.curve->unstable_balance(weight); u && *u < quasi_static_to_m_s * s_.u_per_speed)
                out_.unstable_speed_m_s = *u / s_.u_per_speed;
        plateau_from_ = s_.ends->reach_m();
        plateau_to_ = s_.tube_length_m - s_.ends->reach_m();
    }

    Fall run() {
        note();
        while (y_.z < s_.tube_length_m) {
            if (keeps_to_local_speed()) {
                follow(std::clamp(plateau_from_, y_.z, std::max(y_.z, plateau_to_)));
                cross_plateau();
                follow(s_.tube_length_m);
            } else if (on_plateau()) {
                cross_plateau();
            } else {
                step();
                note();
            }
        }
        out_.time_s = t_;
        out_.exit_speed_m_s = y_.v;
        out_.heat_J = s_.mass_kg * (s_.gravity_m_s2 * s_.tube_length_m - y_.v * y_.v / 2);
        return std::move(out_);
    }

private:
    double share(double z) const { return std::max(s_.ends->share(z) + s_.ends->share(s_.tube_length_m - z) - 1, 0.0); }

    State rate(const State& y) const {
        return {y.v, s_.gravity_m_s2 - s_.drag_N(std::max(y.v, 0.0)) * share(y.z) / s_.mass_kg};
    }

    void note() {
        if (with_path_) out_.path.push_back({t_, y_.z, y_.v});
    }

    bool on_plateau() const {
        return y_.z >= plateau_from_ && y_.z < plateau_to_ && std::abs(rate(y_).v) < settled * s_.gravity_m_s2;
    }

    void cross_plateau() {
        if (y_.z >= plateau_to_) return;
        t_ += (plateau_to_ - y_.z) / *out_.terminal_speed_m_s;
        y_ = {plateau_to_, *out_.terminal_speed_m_s};
        note();
    }

    bool keeps_to_local_speed() const {
        if (!out_.terminal_speed_m_s) return false;
        const double v = *out_.terminal_speed_m_s, a = s_.curve->drag().bore_radius_m();
        return t_ > transient * v / s_.gravity_m_s2 && v * v < slow * s_.gravity_m_s2 * a &&
               s_.curve->relative(s_.u_per_speed * v) > 1 - linear_enough;
    }

    /// Local terminal speed v0 = v_t / share with its first correction for inertia.
    double local_speed(double z) const {
        const double here = share(z), v0 = *out_.terminal_speed_m_s / here;
        const double slope = -v0 / here * (s_.ends->slope_per_m(z) - s_.ends->slope_per_m(s_.tube_length_m - z));
        return v0 * (1 - v0 * slope / s_.gravity_m_s2);
    }

    void follow(double to) {
        constexpr int pieces = 12;
        const double from = y_.z;
        for (int i = 0; i < pieces && to > from; ++i) {
            const double low = from + (to - from) * i / pieces, high = from + (to - from) * (i + 1) / pieces;
            t_ += integral<8>([&](double z) { return 1 / local_speed(z); }, low, high);
            y_ = {high, local_speed(high)};
            note();
        }
        if (to > from) y_.z = to;
    }

    void step() {
        if (h_ == 0) h_ = 1e-4 * std::sqrt(2 * s_.tube_length_m / s_.gravity_m_s2);
        for (int turn = 0; turn < 60; ++turn) {
            const State next = tried(h_);
            const double worse = std::max(error_, 1e-10);
            const double used = h_;
            h_ *= std::clamp(0.9 * std::pow(worse, -0.2), 0.2, 4.0);
            if (error_ > 1) continue;
            if (next.z >= s_.tube_length_m)
                finish_step(next, used);
            else
                accept(next, used);
            return;
        }
        accept(tried(h_), h_);
    }

    void accept(const State& next, double h) {
        t_ += h;
        y_ = next;
    }

    /// Time at which the cubic through both ends of the step reaches the mouth.
    void finish_step(const State& next, double h) {
        double low = 0, high = 1;
        const auto depth = [&](double x) {
            const double o = 1 - x;
            return y_.z * o * o * (1 + 2 * x) + next.z * x * x * (1 + 2 * o) + h * o * x * (y_.v * o - next.v * x);
        };
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (depth(middle) < s_.tube_length_m ? low : high) = middle;
        }
        t_ += low * h;
        y_ = {s_.tube_length_m, y_.v + (next.v - y_.v) * low};
    }

    /// One Dormand-Prince step; leaves the error relative to the tolerance in error_.
    State tried(double h) {
        const State k1 = rate(y_);
        const State k2 = rate(y_ + k1 * (h / 5));
        const State k3 = rate(y_ + (k1 * (3.0 / 40) + k2 * (9.0 / 40)) * h);
        const State k4 = rate(y_ + (k1 * (44.0 / 45) + k2 * (-56.0 / 15) + k3 * (32.0 / 9)) * h);
        const State k5 = rate(
            y_ + (k1 * (19372.0 / 6561) + k2 * (-25360.0 / 2187) + k3 * (64448.0 / 6561) + k4 * (-212.0 / 729)) * h);
        const State k6 = rate(y_ + (k1 * (9017.0 / 3168) + k2 * (-355.0 / 33) + k3 * (46732.0 / 5247) +
                                    k4 * (49.0 / 176) + k5 * (-5103.0 / 18656)) *
                                       h);
        const State next = y_ + (k1 * (35.0 / 384) + k3 * (500.0 / 1113) + k4 * (125.0 / 192) + k5 * (-2187.0 / 6784) +
                                 k6 * (11.0 / 84)) *
                                    h;
        const State k7 = rate(next);
        const State e = (k1 * (71.0 / 57600) + k3 * (-71.0 / 16695) + k4 * (71.0 / 1920) + k5 * (-17253.0 / 339200) +
                         k6 * (22.0 / 525) + k7 * (-1.0 / 40)) *
                        h;
        const double a = s_.curve->drag().bore_radius_m();
        error_ = std::max(std::abs(e.z) / (tolerance * (std::abs(next.z) + a)),
                          std::abs(e.v) / (tolerance * (std::abs(next.v) + 1e-3)));
        return next;
    }

    const FallSetup& s_;
    bool with_path_;
    Fall out_;
    double plateau_from_ = 0, plateau_to_ = 0;
    double t_ = 0, h_ = 0, error_ = 0;
    State y_{0, 0};
};

} // namespace

FallSetup fall_setup(const DragCurve& curve, const EndEffect& ends, double moment, double conductivity, double mass,
                     double length) {
    const double a = curve.drag().bore_radius_m();
    FallSetup s;
    s.curve = &curve;
    s.ends = &ends;
    s.force_scale_N =
        vacuum_permeability * moment * moment / (2 * std::numbers::pi * std::numbers::pi * std::pow(a, 4));
    s.u_per_speed = vacuum_permeability * conductivity * a;
    s.mass_kg = mass;
    s.tube_length_m = length;
    return s;
}

Fall fall(const FallSetup& setup, bool with_path) {
    return Motion(setup, with_path).run();
}

} // namespace pourbook::eddy

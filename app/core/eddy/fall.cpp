#include "core/eddy/fall.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr double tolerance = 3e-5;
constexpr double settled = 3e-5;            // acceleration over g, above the noise that the tolerance leaves
constexpr double quasi_static_to_m_s = 1e6; // the equations hold far below the speed of light
constexpr int most_steps = 200000;

/// Depth, speed, and the work done on the wall over the magnet's mass.
struct State {
    double z = 0, v = 0, w = 0;
    State operator+(const State& o) const { return {z + o.z, v + o.v, w + o.w}; }
    State operator*(double f) const { return {z * f, v * f, w * f}; }
};

// Rodas, order 4, stiffly accurate and L-stable (Hairer and Wanner, Solving Ordinary Differential Equations II,
// section IV.7; the coefficients from memory, their order is tested).
constexpr int stages = 6;
constexpr double rodas_gamma = 0.25;
constexpr double rodas_a[stages - 2][stages - 2] = {
    {1.544, 0, 0, 0},
    {0.9466785280815826, 0.2557011698983284, 0, 0},
    {3.314825187068521, 2.896124015972201, 0.9986419139977817, 0},
    {1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950}};
constexpr double rodas_c[stages - 1][stages - 1] = {
    {-5.6688, 0, 0, 0, 0},
    {-2.430093356833875, -0.2063599157091915, 0, 0, 0},
    {-0.1073529058151375, -9.594562251023355, -20.47028614809616, 0, 0},
    {7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160, 0},
    {8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054}};

class Motion {
public:
    Motion(const FallSetup& setup, bool with_path) : s_(setup), with_path_(with_path) {
        const double weight = s_.mass_kg * s_.gravity_m_s2 / s_.force_scale_N;
        if (const auto u = s_.curve->stable_balance(weight)) out_.terminal_speed_m_s = *u / s_.u_per_speed;
        if (with_path_)
            if (const auto u = s_.curve->unstable_balance(weight); u && *u < quasi_static_to_m_s * s_.u_per_speed)
                out_.unstable_speed_m_s = *u / s_.u_per_speed;
        y_ = {s_.from_depth_m, s_.from_speed_m_s, 0};
        plateau_from_ = s_.ends->reach_m();
        plateau_to_ = s_.tube_length_m - s_.ends->reach_m();
    }

    Fall run() {
        note();
        for (int i = 0; i < most_steps && y_.z < s_.to_depth_m(); ++i) on_plateau() ? cross_plateau() : step();
        out_.time_s = t_;
        out_.exit_speed_m_s = y_.v;
        return checked_fall(s_, std::move(out_), s_.mass_kg * y_.w);
    }

private:
    double deceleration(const State& y) const { return s_.drag_N(std::max(y.v, 0.0)) * s_.share(y.z) / s_.mass_kg; }

    State rate(const State& y) const {
        const double d = deceleration(y);
        return {y.v, s_.gravity_m_s2 - d, d * y.v};
    }

    void note() {
        if (with_path_) out_.path.push_back({t_, y_.z, y_.v, s_.mass_kg * deceleration(y_)});
    }

    bool on_plateau() const {
        return out_.terminal_speed_m_s && !s_.wall && y_.z >= plateau_from_ && y_.z < plateau_to_ &&
               std::abs(rate(y_).v) < settled * s_.gravity_m_s2;
    }

    void cross_plateau() {
        const double way = plateau_to_ - y_.z, v = *out_.terminal_speed_m_s;
        t_ += way / v;
        y_ = {plateau_to_, v, y_.w + s_.gravity_m_s2 * way + (y_.v * y_.v - v * v) / 2};
        note();
    }

    /// Derivatives of the deceleration, and itself, at the beginning of a step.
    struct Slopes {
        double by_z, by_v, itself, v;
    };

    Slopes slopes() const {
        const double v = std::max(y_.v, 1e-12), nudge = 1e-6 * v, here = s_.share(y_.z);
        const double force = s_.drag_N(v), by_v = (s_.drag_N(v + nudge) - force) / nudge;
        const double along = here > 0 ? s_.share_slope_per_m(y_.z) : 0;
        return {force * along / s_.mass_kg, by_v * here / s_.mass_kg, force * here / s_.mass_kg, y_.v};
    }

    /// x of (c - Jacobian) x = b.
    static State solved(const Slopes& s, double c, const State& b) {
        const double v = (b.v - s.by_z * b.z / c) / (c + s.by_v + s.by_z / c), z = (b.z + v) / c;
        return {z, v, (b.w + s.v * s.by_z * z + (s.itself + s.v * s.by_v) * v) / c};
    }

    /// One step of Rodas; leaves the error relative to the tolerance in error_.
    State tried(const Slopes& slopes, double h) {
        const double c = 1 / (rodas_gamma * h);
        std::array<State, stages> u;
        State at = y_;
        for (std::size_t i = 0; i < stages; ++i) {
            if (i > 0 && i <= stages - 2) {
                at = y_;
                for (std::size_t j = 0; j < i; ++j) at = at + u[j] * rodas_a[i - 1][j];
            } else if (i > 0) {
                at = at + u[i - 1];
            }
            State b = rate(at);
            for (std::size_t j = 0; j < i; ++j) b = b + u[j] * (rodas_c[i - 1][j] / h);
            u[i] = solved(slopes, c, b);
        }
        const State error = u[stages - 1], next = at + error;
        const double a = s_.curve->drag().bore_radius_m();
        error_ = std::max(std::abs(error.z) / (tolerance * (std::abs(next.z) + a)),
                          std::abs(error.v) / (tolerance * (std::abs(next.v) + 1e-9)));
        return next;
    }

    void step() {
        if (h_ == 0) h_ = 1e-4 * s_.free_fall_time_s();
        if (y_.v > 0) h_ = std::min(h_, s_.ends->reach_m() / 2 / y_.v); // an end is not to be stepped over
        const Slopes here = slopes();
        for (int i = 0; i < 60; ++i) {
            const State next = tried(here, h_);
            const double used = h_;
            if (!std::isfinite(error_)) error_ = 1e10;
            h_ *= std::clamp(0.9 * std::pow(std::max(error_, 1e-10), -0.25), 0.2, 4.0);
            if (error_ > 1 || next.v < 0) continue;
            next.z < s_.to_depth_m() ? accept(next, used) : finish(here, next, used);
            return;
        }
        accept(tried(here, h_), h_);
    }

    void accept(const State& next, double h) {
        t_ += h;
        y_ = next;
        note();
    }

    /// The step that ends at the mouth.
    void finish(const Slopes& here, State next, double h) {
        const double end = s_.to_depth_m();
        for (int i = 0; i < 20 && std::abs(next.z - end) > 1e-12 * s_.way_m(); ++i) {
            h += (end - next.z) / next.v;
            next = tried(here, h);
        }
        next.z = end;
        accept(next, h);
    }

    const FallSetup& s_;
    bool with_path_;
    Fall out_;
    double plateau_from_ = 0, plateau_to_ = 0;
    double t_ = 0, h_ = 0, error_ = 0;
    State y_;
};

} // namespace

double FallSetup::speed_of_free_fall_m_s() const {
    return std::sqrt(from_speed_m_s * from_speed_m_s + 2 * gravity_m_s2 * way_m());
}

double FallSetup::free_fall_time_s() const {
    return 2 * way_m() / (from_speed_m_s + speed_of_free_fall_m_s());
}

double FallSetup::share(double z) const {
    if (wall) return wall->share(z * wall->length_m() / tube_length_m);
    return std::max(ends->share(z) + ends->share(tube_length_m - z) - 1, 0.0);
}

double FallSetup::share_slope_per_m(double z) const {
    if (!wall) return ends->slope_per_m(z) - ends->slope_per_m(tube_length_m - z);
    const double stretched = wall->length_m() / tube_length_m;
    return wall->slope_per_m(z * stretched) * stretched;
}

Fall checked_fall(const FallSetup& s, Fall f, double work_J) {
    constexpr double time_slack = 1e-5, energy_slack = 1e-4;
    const double quickest = s.free_fall_time_s(), fastest = s.speed_of_free_fall_m_s(),
                 most_J = s.mass_kg * fastest * fastest / 2;
    f.heat_J = most_J - s.mass_kg * f.exit_speed_m_s * f.exit_speed_m_s / 2;
    const auto says = [&](const char* what) { f.fault = std::string("the computed fall is impossible: ") + what; };
    if (!(std::isfinite(f.time_s) && std::isfinite(f.exit_speed_m_s)))
        says("it has no time");
    else if (f.time_s < quickest * (1 - time_slack))
        says("quicker than free fall");
    else if (!(f.exit_speed_m_s >= 0 && f.exit_speed_m_s <= fastest * (1 + time_slack)))
        says("it leaves faster than free fall");
    else if (std::abs(f.heat_J - work_J) > energy_slack * most_J)
        says("its heat is not the work done on the wall");
    f.heat_J = std::max(f.heat_J, 0.0); // by the last digits
    f.time_s = std::max(f.time_s, quickest);
    return f;
}

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

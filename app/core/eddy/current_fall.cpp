#include "core/eddy/current_fall.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::eddy {
namespace {

constexpr int most_turns = 30000;

struct Moment {
    double z = 0, v = 0, heat = 0; // heat of the wall over the magnet's mass
    std::vector<double> y;         // currents over the root of the mass
};

class CurrentMotion {
public:
    CurrentMotion(const FallSetup& setup, const WallModes& modes, bool with_path, double tolerance)
        : s_(setup), modes_(modes), with_path_(with_path), tolerance_(tolerance), g_(setup.gravity_m_s2),
          bore_(setup.curve->drag().bore_radius_m()),
          slow_(setup.mass_kg * setup.gravity_m_s2 / setup.coefficient_N_s_m()) {
        const double conductivity = s_.u_per_speed / (vacuum_permeability * bore_);
        for (const double t : modes_.seconds_per_S_m()) tau_.push_back(t * conductivity);
        now_.z = s_.from_depth_m;
        now_.v = s_.from_speed_m_s;
        now_.y.assign(tau_.size(), 0.0);
    }

    CurrentFall run() {
        const double weight = s_.mass_kg * g_ / s_.force_scale_N;
        Fall& f = out_.fall;
        if (const auto u = s_.curve->stable_balance(weight)) f.terminal_speed_m_s = *u / s_.u_per_speed;
        if (const auto u = s_.curve->unstable_balance(weight); with_path_ && u)
            f.unstable_speed_m_s = *u / s_.u_per_speed;
        h_ = 1e-3 * std::min(s_.free_fall_time_s(), slow_ / g_ + fading_time_s(s_));
        note();
        int steps = 0;
        while (now_.z < s_.to_depth_m() && ++steps < most_turns) step();
        f.time_s = steps < most_turns ? t_ : NAN;
        f.exit_speed_m_s = now_.v;
        double stored = 0;
        for (std::size_t k = 0; k < tau_.size(); ++k) stored += tau_[k] * now_.y[k] * now_.y[k] / 2;
        const double fastest = s_.speed_of_free_fall_m_s();
        out_.balance = (now_.v * now_.v + 2 * (stored + now_.heat)) / (fastest * fastest) - 1;
        f = checked_fall(s_, std::move(f), s_.mass_kg * (now_.heat + stored));
        return std::move(out_);
    }

private:
    /// Couplings over the root of the mass, scaled to the low-speed drag at this depth.
    void couplings(double z) {
        modes_.couplings(z, s_.tube_length_m, coupling_);
        double own = 0;
        for (const double c : coupling_) own += c * c;
        const double scale = own > 0 ? std::sqrt(s_.coefficient_N_s_m() * s_.share(z) / (s_.mass_kg * own)) : 0;
        for (double& c : coupling_) c *= scale;
    }

    /// The implicit midpoint rule over h.
    Moment moved(const Moment& from, double h) {
        double middle_v = from.v;
        const auto ratio = [&](std::size_t k) { return h / (2 * tau_[k]); };
        for (int turn = 0; turn < 4; ++turn) {
            couplings(from.z + h / 2 * middle_v);
            double pull = 0, brake = 0;
            for (std::size_t k = 0; k < tau_.size(); ++k) {
                const double x = ratio(k), keep = 1 / (1 + x);
                pull += coupling_[k] * keep * from.y[k];
                brake += coupling_[k] * coupling_[k] * x * keep;
            }
            const double before = middle_v;
            middle_v = (from.v + h / 2 * (g_ + pull)) / (1 + h / 2 * brake);
            if (std::abs(middle_v - before) * h < 1e-7 * tolerance_ * bore_) break;
        }
        Moment to;
        to.z = from.z + h * middle_v;
        to.heat = from.heat;
        to.y.resize(tau_.size());
        double force = 0;
        for (std::size_t k = 0; k < tau_.size(); ++k) {
            const double x = ratio(k), y = (from.y[k] - x * coupling_[k] * middle_v) / (1 + x);
            to.y[k] = 2 * y - from.y[k];
            to.heat += h * y * y;
            force += coupling_[k] * y;
        }
        to.v = from.v + h * (g_ + force);
        force_ = -force * s_.mass_kg;
        return to;
    }

    void step() {
        // The table of couplings is to be met at every eighth of the bore radius.
        const double quick = std::max(std::abs(now_.v), slow_);
        h_ = std::min(h_, 0.125 * bore_ / quick);
        for (int turn = 0; turn < 40; ++turn) {
            const Moment once = moved(now_, h_), first = moved(now_, h_ / 2);
            Moment twice = moved(first, h_ / 2);
            const double error =
                std::max(std::abs(once.z - twice.z) / (tolerance_ * bore_),
                         std::abs(once.v - twice.v) / (100 * tolerance_ * (std::abs(twice.v) + slow_)));
            const double used = h_;
            h_ *= std::clamp(0.9 / std::cbrt(std::max(error, 1e-6)), 0.2, 2.0);
            if (error > 1) continue;
            twice.z < s_.to_depth_m() ? accept(std::move(twice), used) : finish(used);
            return;
        }
        accept(moved(now_, h_), h_);
    }

    void accept(Moment next, double h) {
        t_ += h;
        now_ = std::move(next);
        out_.fall.turns_back = out_.fall.turns_back || now_.v < 0;
        note();
    }

    /// The step that ends at the mouth.
    void finish(double h) {
        double low = 0, high = h;
        for (int i = 0; i < 50 && high - low > 1e-13 * t_; ++i) {
            const double middle = (low + high) / 2;
            (moved(now_, middle).z < s_.to_depth_m() ? low : high) = middle;
        }
        Moment last = moved(now_, high);
        last.z = s_.to_depth_m();
        accept(std::move(last), high);
    }

    void note() {
        if (with_path_) out_.fall.path.push_back({t_, now_.z, now_.v, force_});
    }

    const FallSetup& s_;
    const WallModes& modes_;
    bool with_path_;
    double tolerance_, g_, bore_, slow_; // the last: speed at which the low-speed drag would hold the weight
    CurrentFall out_;
    std::vector<double> tau_, coupling_;
    Moment now_;
    double t_ = 0, h_ = 0, force_ = 0;
};

} // namespace

CurrentFall fall_with_currents(const FallSetup& setup, const WallModes& modes, bool with_path, double tolerance) {
    return CurrentMotion(setup, modes, with_path, tolerance).run();
}

double fading_time_s(const FallSetup& s) {
    const TubeDrag& d = s.curve->drag();
    return s.u_per_speed * d.bore_radius_m() * std::min(1.0, d.wall_over_bore()) / 4;
}

} // namespace pourbook::eddy

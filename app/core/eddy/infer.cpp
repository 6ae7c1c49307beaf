#include "core/eddy/infer.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <string>

namespace pourbook::eddy {
namespace {

constexpr double lowest_S_m = 1e3, highest_S_m = 1e13;
constexpr std::size_t normal_from = 30; // degrees of freedom
constexpr double disagree = 1.96;       // standard uncertainties apart, 5 % chance

/// ln(sigma) at which the fall takes this time: it grows with sigma.
double solved(const DropModel& model, const Variation& variation, double time_s) {
    const auto miss = [&](double t) {
        return std::log(model.fall(model.setup(std::exp(t), variation)).time_s / time_s);
    };
    double low = std::log(lowest_S_m), high = std::log(highest_S_m), at_low = miss(low), at_high = miss(high);
    double t = low;
    for (int i = 0; i < 60 && high - low > 1e-9; ++i) { // regula falsi, halved where it stalls
        t = low + (high - low) * std::clamp(-at_low / (at_high - at_low), 0.02, 0.98);
        const double here = miss(t);
        if (std::abs(here) < 1e-9) break;
        (here > 0 ? high : low) = t;
        (here > 0 ? at_high : at_low) = here;
        (here > 0 ? at_low : at_high) *= 0.5;
    }
    return t;
}

/// Slopes of ln(time) at the nominal solution.
struct Response {
    double conductivity, drag, mass, length;
};

Response response(const DropModel& model, double conductivity) {
    constexpr double step = 2e-3;
    const auto slope = [&](auto change) {
        Variation more = model.nominal(), less = model.nominal();
        double sigma_more = conductivity, sigma_less = conductivity;
        change(more, sigma_more, 1 + step);
        change(less, sigma_less, 1 - step);
        return std::log(model.fall(model.setup(sigma_more, more)).time_s /
                        model.fall(model.setup(sigma_less, less)).time_s) /
               (2 * step);
    };
    return {slope([](Variation&, double& sigma, double f) { sigma *= f; }),
            slope([](Variation& v, double&, double f) { v.drag *= f; }),
            slope([](Variation& v, double&, double f) { v.mass_kg *= f; }),
            slope([](Variation& v, double&, double f) { v.tube_length_m *= f; })};
}

double mean_of(const std::vector<double>& x) {
    return std::accumulate(x.begin(), x.end(), 0.0) / static_cast<double>(x.size());
}

/// Draws of the true mean time: reading and scatter of n drops.
std::vector<double> mean_times(const TimedDrops& drops, Draws& draws) {
    const std::size_t n = drops.times_s.size();
    const double mean = mean_of(drops.times_s);
    double squares = 0;
    for (double t : drops.times_s) squares += (t - mean) * (t - mean);
    const std::size_t freedom = n - 1;
    const double scatter = freedom > 0 ? std::sqrt(squares / static_cast<double>(freedom * n)) : 0;
    const double reading = drops.reading_s / std::sqrt(static_cast<double>(n));
    std::vector<double> out(draws.samples(), mean);
    const std::vector<double> z = draws.of("drops.scatter"), r = draws.of("drops.reading");
    std::vector<double> chi2(draws.samples(), 0.0);
    if (freedom < normal_from)
        for (std::size_t k = 0; k < freedom; ++k) {
            const auto& column = draws.of("drops.freedom" + std::to_string(k));
            for (std::size_t i = 0; i < chi2.size(); ++i) chi2[i] += column[i] * column[i];
        }
    for (std::size_t i = 0; i < out.size(); ++i) {
        const double heavier =
            freedom == 0 || freedom >= normal_from ? 1 : std::sqrt(static_cast<double>(freedom) / chi2[i]);
        // The scatter seen holds the reading's part already: only what it falls short of is added.
        const double more = std::sqrt(std::max(0.0, reading * reading - scatter * scatter));
        out[i] += scatter * heavier * z[i] + more * r[i];
    }
    return out;
}

/// Variances and covariance of the samples' logarithms.
struct Moments {
    double aa = 0, bb = 0, ab = 0;
};

Moments moments(const Conductivity& a, const Conductivity& b) {
    const std::size_t n = a.samples_S_m.size();
    double mean_a = 0, mean_b = 0;
    for (std::size_t i = 0; i < n; ++i) {
        mean_a += std::log(a.samples_S_m[i]) / static_cast<double>(n);
        mean_b += std::log(b.samples_S_m[i]) / static_cast<double>(n);
    }
    Moments m;
    for (std::size_t i = 0; i < n; ++i) {
        const double x = std::log(a.samples_S_m[i]) - mean_a, y = std::log(b.samples_S_m[i]) - mean_b;
        m.aa += x * x / static_cast<double>(n);
        m.bb += y * y / static_cast<double>(n);
        m.ab += x * y / static_cast<double>(n);
    }
    return m;
}

/// Difference of the two over the standard uncertainty of that difference.
double apart(const Conductivity& a, const Conductivity& b) {
    std::vector<double> ratios;
    for (std::size_t i = 0; i < a.samples_S_m.size(); ++i)
        ratios.push_back(std::log(a.samples_S_m[i] / b.samples_S_m[i]));
    const double spread = (quantile(ratios, 0.84134) - quantile(ratios, 0.15866)) / 2;
    return std::abs(quantile(ratios, 0.5)) / spread;
}

} // namespace

Conductivity summed_up(double value, std::vector<double> samples) {
    Conductivity c;
    c.value_S_m = value;
    std::vector<double> sorted = samples;
    c.low90_S_m = quantile(sorted, 0.05);
    c.high90_S_m = quantile(sorted, 0.95);
    c.standard_uncertainty_S_m = (quantile(sorted, 0.84134) - quantile(sorted, 0.15866)) / 2;
    c.samples_S_m = std::move(samples);
    return c;
}

Result<Conductivity> conductivity_from_times(const DropModel& model, const TimedDrops& drops,
                                             const std::vector<Variation>& variations, Draws& draws) {
    if (drops.times_s.empty()) return refused("no fall times are given");
    const double mean = mean_of(drops.times_s);
    const Variation& nominal = model.nominal();
    const double free_fall = model.setup(1).free_fall_time_s();
    if (!(mean > free_fall * 1.01))
        return refused("a fall of " + significant(mean, 3) + " s is no longer than free fall through this tube (" +
                       significant(free_fall, 3) + " s): check the length and the clock");
    if (!model.curve().stable_balance(nominal.mass_kg * standard_gravity_m_s2 / model.setup(1).force_scale_N))
        return refused("this magnet is too heavy for the tube's peak drag: its fall says little of the conductivity");
    const double ln_sigma = solved(model, nominal, mean);
    if (ln_sigma > std::log(highest_S_m) - 1)
        return refused("so long a fall needs a conductivity that no metal has: did the magnet rub or stick?");
    const Response by = response(model, std::exp(ln_sigma));
    const std::vector<double> times = mean_times(drops, draws);
    std::vector<double> samples(variations.size());
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const Variation& v = variations[i];
        const double explained = by.drag * std::log(v.drag / nominal.drag) +
                                 by.mass * std::log(v.mass_kg / nominal.mass_kg) +
                                 by.length * std::log(v.tube_length_m / nominal.tube_length_m);
        samples[i] =
            std::exp(ln_sigma + (std::log(std::max(times[i], free_fall) / mean) - explained) / by.conductivity);
    }
    return summed_up(std::exp(ln_sigma), std::move(samples));
}

Result<Conductivity> conductivity_from_resistance(const FourWire& m, double wall_area_m2,
                                                  const std::vector<Variation>& variations, Draws& draws) {
    if (!(m.resistance_ohm.value > 0 && m.span_m.value > 0))
        return refused("a resistance and a span above zero are needed");
    const auto& ohms = draws.of("wire.resistance");
    const auto& span = draws.of("wire.span");
    std::vector<double> samples(variations.size());
    for (std::size_t i = 0; i < samples.size(); ++i)
        samples[i] = m.span_m.at(span[i]) / (m.resistance_ohm.at(ohms[i]) * variations[i].wall_area_m2);
    return summed_up(m.span_m.value / (m.resistance_ohm.value * wall_area_m2), std::move(samples));
}

double agreement(const Conductivity& a, const Conductivity& b) {
    return std::erfc(apart(a, b) / std::numbers::sqrt2);
}

Conductivity combined(const Conductivity& a, const Conductivity& b) {
    const Moments m = moments(a, b);
    const double share = std::clamp((m.bb - m.ab) / (m.aa + m.bb - 2 * m.ab), 0.0, 1.0); // of a
    const auto mixed = [share](double x, double y) {
        return std::exp(share * std::log(x) + (1 - share) * std::log(y));
    };
    const double value = mixed(a.value_S_m, b.value_S_m), away = apart(a, b), wider = away > disagree ? away : 1;
    std::vector<double> samples(a.samples_S_m.size());
    for (std::size_t i = 0; i < samples.size(); ++i)
        samples[i] = value * std::pow(mixed(a.samples_S_m[i], b.samples_S_m[i]) / value, wider);
    return summed_up(value, std::move(samples));
}

} // namespace pourbook::eddy

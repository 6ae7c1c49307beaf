#include "core/laws/own_castings.hpp"

#include "core/casting/practice.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace pourbook {
namespace {

/// Sums over the trials of one magnet, for the inverse of their covariance (Sherman and Morrison).
struct Shared {
    double weight = 0;     // sum of 1 / own variance
    double difference = 0; // sum of difference / own variance
    double square = 0;     // sum of difference^2 / own variance
    double variance = 0;   // of the error they share

    double exponent() const { return -(square - variance * difference * difference / (1 + variance * weight)) / 2; }
};

double log_weight(const std::vector<OwnCasting>& trials, double resistivity_si, double scatter) {
    std::map<std::string, Shared> groups;
    double out = 0;
    for (std::size_t i = 0; i < trials.size(); ++i) {
        const OwnCasting& t = trials[i];
        const double away = std::log(t.conductivity_S_m * resistivity_si);
        const double common = t.shared.empty() ? 0 : t.shared_relative * t.shared_relative;
        const double own = scatter * scatter + std::max(0.0, t.relative * t.relative - common);
        Shared& g = groups[t.shared.empty() ? "#" + std::to_string(i) : t.shared];
        g.weight += 1 / own;
        g.difference += away / own;
        g.square += away * away / own;
        g.variance = common;
    }
    for (const auto& [name, g] : groups) out += g.exponent();
    return out;
}

} // namespace

std::vector<OwnCasting> own_castings_of(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) {
    std::vector<OwnCasting> out;
    if (!conditions.casting || !conditions.casting->own_trials) return out;
    std::copy_if(catalogue.own_castings.begin(), catalogue.own_castings.end(), std::back_inserter(out),
                 [&](const OwnCasting& c) { return c.metal == metal.slug; });
    return out;
}

double scatter_between_castings(const Catalogue& catalogue, const Metal& metal) {
    const auto entries = casting::practices(catalogue, metal, "casting_scatter", "");
    return entries.empty() ? 0 : casting::range_of(entries).middle();
}

NextCasting next_casting(const std::vector<OwnCasting>& trials, const std::vector<double>& drawn_si, double scatter) {
    std::vector<double> weights;
    for (const double rho : drawn_si) weights.push_back(log_weight(trials, rho, scatter));
    const double most = *std::max_element(weights.begin(), weights.end()); // the densities may be too small for numbers
    double sum = 0, mean = 0, square = 0;
    for (std::size_t s = 0; s < weights.size(); ++s) {
        const double w = std::exp(weights[s] - most), x = std::log(drawn_si[s]);
        sum += w;
        mean += w * x;
        square += w * x * x;
    }
    mean /= sum;
    const double variance = std::max(0.0, square / sum - mean * mean);
    return {std::exp(mean), std::sqrt(variance + scatter * scatter), std::sqrt(variance)};
}

} // namespace pourbook

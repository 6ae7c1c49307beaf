#include "core/casting_state/own_castings.hpp"

#include "core/casting/practice.hpp"
#include "core/evaluate/sampled.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

/// Logarithms of the weights, the greatest 0: the densities themselves may all be too small for a number.
std::vector<double> log_weights(const std::vector<OwnCasting>& trials, const std::vector<double>& conductivities,
                                double scatter) {
    std::vector<double> out(conductivities.size(), 0);
    for (const OwnCasting& t : trials) {
        const double variance = scatter * scatter + t.relative * t.relative;
        for (std::size_t s = 0; s < out.size(); ++s) {
            const double away = std::log(t.conductivity_S_m / conductivities[s]);
            out[s] -= away * away / variance / 2;
        }
    }
    const double most = *std::max_element(out.begin(), out.end());
    for (double& w : out) w -= most;
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

std::vector<std::size_t> places_by_weight(const std::vector<double>& weights) {
    double sum = 0;
    for (const double w : weights) sum += w;
    const double step = sum / static_cast<double>(weights.size());
    std::vector<std::size_t> places;
    double reached = 0, mark = step / 2;
    for (std::size_t s = 0; s < weights.size(); ++s) {
        reached += weights[s];
        for (; mark < reached && places.size() < weights.size(); mark += step) places.push_back(s);
    }
    while (places.size() < weights.size()) places.push_back(weights.size() - 1); // rounding at the end
    return places;
}

void follow_own_castings(const Catalogue& catalogue, const Conditions& conditions, Draws& draws) {
    if (!conditions.casting || draws.samples() == 0) return;
    std::vector<std::string> done;
    for (const OwnCasting& c : catalogue.own_castings) {
        const Metal* metal = catalogue.metal(c.metal);
        if (!metal || std::find(done.begin(), done.end(), metal->slug) != done.end()) continue;
        done.push_back(metal->slug);
        const std::vector<OwnCasting> trials = own_castings_of(catalogue, *metal, conditions);
        if (trials.empty()) continue;
        Conditions room = conditions;
        room.temperature_K = room_temperature_K;
        room.casting->own_trials = false; // what the draws were before
        room.story = false;
        const Result<Evaluated> e = evaluate(catalogue, *metal, "conductivity", room);
        if (!e) continue;
        Draws before = draws;
        std::vector<double> weights =
            log_weights(trials, sampled(*e, before), scatter_between_castings(catalogue, *metal));
        for (double& w : weights) w = std::exp(w);
        draws.take(metal->slug + ".", places_by_weight(weights));
    }
}

} // namespace pourbook

#include "core/ranking/order.hpp"

#include "core/uncertainty/draws.hpp"

#include <algorithm>
#include <numeric>

namespace pourbook {
namespace {

Place place_of(const Contender& c, std::size_t index) {
    Place p;
    p.contender = index;
    p.median = p.low90 = p.high90 = c.nominal;
    if (c.samples.empty()) return p;
    std::vector<double> sorted = c.samples;
    p.median = quantile(sorted, 0.5);
    p.low90 = quantile(sorted, 0.05);
    p.high90 = quantile(sorted, 0.95);
    return p;
}

std::size_t samples_of(const std::vector<Contender>& contenders) {
    return contenders.empty() ? 0 : contenders.front().samples.size();
}

/// ranks[c][s]: rank of contender c in sample s.
std::vector<std::vector<std::size_t>> ranks_in_samples(const std::vector<Contender>& contenders, bool best_high) {
    const std::size_t samples = samples_of(contenders);
    std::vector ranks(contenders.size(), std::vector<std::size_t>(samples));
    std::vector<std::size_t> order(contenders.size());
    for (std::size_t s = 0; s < samples; ++s) {
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            const double x = contenders[a].samples[s], y = contenders[b].samples[s];
            return x == y ? a < b : best_high == (x > y);
        });
        for (std::size_t r = 0; r < order.size(); ++r) ranks[order[r]][s] = r + 1;
    }
    return ranks;
}

void add_rank_interval(Place& p, std::vector<std::size_t> ranks) {
    if (ranks.empty()) {
        p.rank_low = p.rank_high = p.rank;
        return;
    }
    std::sort(ranks.begin(), ranks.end());
    const auto first = std::upper_bound(ranks.begin(), ranks.end(), std::size_t{1}) - ranks.begin();
    p.p_first = static_cast<double>(first) / static_cast<double>(ranks.size());
    p.rank_low = ranks[ranks.size() / 20];
    p.rank_high = ranks[ranks.size() - 1 - ranks.size() / 20];
}

/// Share of samples in which `ahead` is better than `behind`.
double share_better(const Contender& ahead, const Contender& behind, bool best_high) {
    std::size_t better = 0;
    for (std::size_t s = 0; s < ahead.samples.size(); ++s)
        if (best_high ? ahead.samples[s] > behind.samples[s] : ahead.samples[s] < behind.samples[s]) ++better;
    return static_cast<double>(better) / static_cast<double>(ahead.samples.size());
}

void add_ties(std::vector<Place>& places, const std::vector<Contender>& contenders, bool best_high) {
    if (samples_of(contenders) == 0) return;
    for (std::size_t i = 0; i < places.size(); ++i)
        for (std::size_t j = i + 1; j < places.size(); ++j) {
            const Contender &a = contenders[places[i].contender], &b = contenders[places[j].contender];
            if (share_better(a, b, best_high) >= told_apart) continue;
            places[i].tied_with.push_back(b.name);
            places[j].tied_with.push_back(a.name);
        }
}

} // namespace

std::vector<Place> put_in_order(const std::vector<Contender>& contenders, bool best_high) {
    std::vector<Place> places;
    for (std::size_t i = 0; i < contenders.size(); ++i) places.push_back(place_of(contenders[i], i));
    std::stable_sort(places.begin(), places.end(), [&](const Place& a, const Place& b) {
        return best_high ? a.median > b.median : a.median < b.median;
    });
    const auto ranks = ranks_in_samples(contenders, best_high);
    for (std::size_t i = 0; i < places.size(); ++i) {
        places[i].rank = i + 1;
        add_rank_interval(places[i], ranks[places[i].contender]);
    }
    add_ties(places, contenders, best_high);
    return places;
}

} // namespace pourbook

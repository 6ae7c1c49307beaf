#include "core/ranking/order.hpp"

#include "core/uncertainty/spread.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <tuple>
#include <utility>

namespace pourbook {
namespace {

/// Contenders counted in one go, between two words of progress: one sample's rungs then serve them all from the fastest
/// memory.
constexpr std::size_t batch_size = 64;

/// One beyond the contenders compared closely.
struct Other {
    std::size_t place;
    std::vector<double> gain;
};

/// How many of these, the best first, are at least as good. By halves without a branch to guess.
std::size_t at_least(const double* rungs, std::size_t count, double gain) {
    std::size_t above = 0;
    while (count > 1) {
        const std::size_t half = count / 2;
        above += rungs[above + half - 1] >= gain ? half : 0;
        count -= half;
    }
    return above + (rungs[above] >= gain ? 1 : 0);
}

/// The contenders compared closely: their values in each sample, best first, and how many others beat each place.
class Ladder {
public:
    Ladder(std::vector<std::vector<double>> gains, std::size_t samples)
        : gains_(std::move(gains)), samples_(samples), count_(gains_.size()), rungs_(samples * count_),
          who_(samples * count_), last_(samples), better_(samples * (count_ + 1)) {
        std::vector<std::pair<double, std::uint32_t>> sorted(count_);
        for (std::size_t s = 0; s < samples_; ++s) {
            for (std::size_t k = 0; k < count_; ++k) sorted[k] = {-gains_[k][s], static_cast<std::uint32_t>(k)};
            std::sort(sorted.begin(), sorted.end());
            for (std::size_t p = 0; p < count_; ++p)
                std::tie(rungs_[s * count_ + p], who_[s * count_ + p]) = std::pair(-sorted[p].first, sorted[p].second);
            last_[s] = rungs_[(s + 1) * count_ - 1];
            lowest_ = std::min(lowest_, last_[s]);
        }
    }

    /// None of them is beaten by anyone who never gets above this.
    double lowest() const { return lowest_; }
    const std::vector<double>& gains(std::size_t k) const { return gains_[k]; }
    double best(std::size_t s) const { return rungs_[s * count_]; }
    std::size_t best_one(std::size_t s) const { return who_[s * count_]; }

    /// Counts contenders that are not of them.
    void add(const std::vector<Other>& others) {
        for (std::size_t s = 0; s < samples_; ++s)
            for (const Other& o : others)
                if (o.gain[s] > last_[s])
                    ++better_[s * (count_ + 1) + at_least(&rungs_[s * count_], count_, o.gain[s])];
    }

    /// 5 % and 95 % of the rank of each.
    std::vector<std::pair<std::size_t, std::size_t>> rank_intervals() const {
        std::vector<std::vector<std::uint32_t>> ranks(count_, std::vector<std::uint32_t>(samples_));
        for (std::size_t s = 0; s < samples_; ++s) {
            std::uint32_t ahead = 0;
            for (std::size_t p = 0; p < count_; ++p) {
                ahead += better_[s * (count_ + 1) + p];
                ranks[who_[s * count_ + p]][s] = static_cast<std::uint32_t>(p) + 1 + ahead;
            }
        }
        std::vector<std::pair<std::size_t, std::size_t>> out;
        for (auto& r : ranks) {
            std::sort(r.begin(), r.end());
            out.emplace_back(r[samples_ / 20], r[samples_ - 1 - samples_ / 20]);
        }
        return out;
    }

private:
    std::vector<std::vector<double>> gains_;
    std::size_t samples_, count_;
    std::vector<double> rungs_;         // by sample: their gains, best first
    std::vector<std::uint32_t> who_;    // of each rung
    std::vector<double> last_;          // by sample: the lowest rung, most others stay below it
    std::vector<std::uint32_t> better_; // by sample: others that come in just above the place
    double lowest_ = std::numeric_limits<double>::infinity();
};

class Ordering {
public:
    Ordering(const std::vector<Standing>& standings, const SamplesOf& samples_of, std::size_t samples, bool best_high)
        : standings_(standings), samples_of_(samples_of), samples_(samples), best_high_(best_high) {
        std::vector<std::pair<double, std::size_t>> order; // best first, as entered where alike
        order.reserve(standings.size());
        for (const Standing& s : standings) order.emplace_back(best_high ? -s.median : s.median, order.size());
        std::sort(order.begin(), order.end());
        places_.reserve(order.size());
        for (const auto& [value, i] : order) {
            const Standing& s = standings[i];
            places_.push_back({i, places_.size() + 1, s.median, s.low90, s.high90, 0, 0, 0, {}});
        }
    }

    std::vector<Place> run(const Progress& progress) {
        if (samples_ == 0) {
            for (Place& p : places_)
                p.low90 = p.high90 = p.p_first = std::numeric_limits<double>::quiet_NaN(); // nothing was varied
            return std::move(places_);
        }
        const std::size_t near = std::min(most_compared, places_.size());
        if (near > 0) compare(near, progress);
        return std::move(places_);
    }

private:
    /// Turned so that more is better.
    std::vector<double> gains(const Place& place) const {
        std::vector<double> out = samples_of_(place.contender);
        if (!best_high_)
            for (double& x : out) x = -x;
        return out;
    }
    double most(const Place& p) const {
        const Standing& s = standings_[p.contender];
        return best_high_ ? s.highest : -s.lowest;
    }
    double least(const Place& p) const {
        const Standing& s = standings_[p.contender];
        return best_high_ ? s.lowest : -s.highest;
    }

    void compare(std::size_t near, const Progress& progress) {
        std::vector<std::vector<double>> nearest;
        for (std::size_t i = 0; i < near; ++i) nearest.push_back(gains(places_[i]));
        Ladder ladder(std::move(nearest), samples_);
        std::vector<double> best(samples_);
        std::vector<std::size_t> first(samples_);
        for (std::size_t s = 0; s < samples_; ++s) {
            best[s] = ladder.best(s);
            first[s] = ladder.best_one(s);
        }
        for (std::size_t i = near; i < places_.size();) {
            if (!goes_on(progress, static_cast<double>(i) / static_cast<double>(places_.size()))) return;
            const std::size_t end = std::min(i + batch_size, places_.size());
            std::vector<Other> batch;
            for (; i < end; ++i)
                if (most(places_[i]) > ladder.lowest()) batch.push_back({i, gains(places_[i])});
            ladder.add(batch);
            for (const Other& o : batch)
                for (std::size_t s = 0; s < samples_; ++s)
                    if (o.gain[s] > best[s]) {
                        best[s] = o.gain[s];
                        first[s] = o.place;
                    }
        }
        std::vector<std::size_t> wins(places_.size());
        for (const std::size_t i : first) ++wins[i];
        for (std::size_t i = 0; i < places_.size(); ++i)
            places_[i].p_first = static_cast<double>(wins[i]) / static_cast<double>(samples_);
        const auto intervals = ladder.rank_intervals();
        for (std::size_t i = 0; i < near; ++i) std::tie(places_[i].rank_low, places_[i].rank_high) = intervals[i];
        add_ties(ladder, near);
    }

    void add_ties(const Ladder& ladder, std::size_t near) {
        for (std::size_t i = 0; i < near; ++i)
            for (std::size_t j = i + 1; j < near; ++j) {
                if (least(places_[i]) > most(places_[j])) continue;
                const std::vector<double>&a = ladder.gains(i), &b = ladder.gains(j);
                std::size_t better = 0;
                for (std::size_t s = 0; s < samples_; ++s) better += a[s] > b[s] ? 1 : 0;
                if (static_cast<double>(better) >= told_apart * static_cast<double>(samples_)) continue;
                places_[i].tied_with.emplace_back(standings_[places_[j].contender].name);
                places_[j].tied_with.emplace_back(standings_[places_[i].contender].name);
            }
    }

    const std::vector<Standing>& standings_;
    const SamplesOf& samples_of_;
    std::size_t samples_;
    bool best_high_;
    std::vector<Place> places_;
};

} // namespace

Standing sum_up(std::string_view name, double nominal, const std::vector<double>& samples) {
    if (samples.empty()) return {name, nominal, nominal, nominal, nominal, nominal};
    const Spread spread = spread_of(samples);
    return {name, spread.median, spread.low90, spread.high90, spread.lowest, spread.highest};
}

std::vector<Place> put_in_order(const std::vector<Standing>& standings, const SamplesOf& samples_of,
                                std::size_t samples, bool best_high, const Progress& progress) {
    return Ordering(standings, samples_of, samples, best_high).run(progress);
}

} // namespace pourbook

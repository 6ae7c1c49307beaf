#include "questions/rank/tradeoff.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <unordered_set>

namespace pourbook {
namespace {

using Merits = std::vector<std::pair<double, double>>; // both turned so that high is better

/// front[i]: no other is at least as good in both and better in one. Sorting by the first goal makes it one sweep.
std::vector<bool> front_of(const Merits& merits) {
    std::vector<std::size_t> order(merits.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return merits[a] > merits[b]; });
    std::vector<bool> front(merits.size(), false);
    double best_second = -std::numeric_limits<double>::infinity();
    std::pair<double, double> last;
    for (std::size_t i : order) {
        front[i] = merits[i].second > best_second || (merits[i].second == best_second && merits[i] == last);
        if (merits[i].second > best_second) {
            best_second = merits[i].second;
            last = merits[i];
        }
    }
    return front;
}

double turned(double x, bool high) {
    return high ? x : -x;
}

std::string beater(const std::vector<TradeoffPoint>& points, const Merits& merits, std::size_t i) {
    for (std::size_t j = 0; j < points.size(); ++j)
        if (merits[j].first >= merits[i].first && merits[j].second >= merits[i].second && merits[j] != merits[i])
            return points[j].metal->slug;
    return {};
}

void add_sources(std::vector<std::string>& keys, const RankResult& result, const RankedMetal& metal) {
    for (const std::string& property : result.merit.properties()) {
        const auto value = result.input(metal, property);
        if (value && !value->sources.empty() &&
            std::find(keys.begin(), keys.end(), value->sources.front().key) == keys.end())
            keys.push_back(value->sources.front().key);
    }
}

/// Appends what is said of metals not yet in the list.
void add_new(std::vector<LeftOut>& list, const std::vector<LeftOut>& more) {
    std::unordered_set<const Metal*> known;
    for (const LeftOut& l : list) known.insert(l.metal);
    for (const LeftOut& l : more)
        if (known.insert(l.metal).second) list.push_back(l);
}

/// Magnet, tube and amount are for the goal with a fall; where neither has one, the first refuses them.
void leave_setup_to_the_fall(const Catalogue& catalogue, GoalWords& first, GoalWords& second) {
    const bool in_first = needs_setup(catalogue, first), in_second = needs_setup(catalogue, second);
    if (in_first && !in_second) second.fall = {};
    if (in_second && !in_first) first.fall = {};
}

} // namespace

Result<TradeoffResult> tradeoff(const Catalogue& catalogue, const TradeoffRequest& request, const Progress& progress) {
    RankRequest one{request.first, request.from, request.conditions, request.to_K, 0, request.samples, request.seed},
        two = one;
    two.goal = request.second;
    leave_setup_to_the_fall(catalogue, one.goal, two.goal);
    const Result<RankResult> first = rank(catalogue, one, part_of(progress, 0, 0.5));
    if (!first) return first.problem();
    const Result<RankResult> second = rank(catalogue, two, part_of(progress, 0.5, 1));
    if (!second) return second.problem();

    TradeoffResult result;
    result.first_label = first->label;
    result.first_formula = first->formula;
    result.first_unit = first->unit;
    result.first_high = first->best_high;
    result.second_label = second->label;
    result.second_formula = second->formula;
    result.second_unit = second->unit;
    result.second_high = second->best_high;
    result.conditions = request.conditions;
    result.to_K = request.to_K.value_or(no_number);
    std::map<const Metal*, const RankedMetal*> in_second;
    for (const RankedMetal& m : second->ranked) in_second[m.metal] = &m;
    Merits merits;
    for (const RankedMetal& m : first->ranked) {
        const auto other = in_second.find(m.metal);
        if (other == in_second.end()) continue;
        result.points.push_back(
            {m.metal, m.place, other->second->place, false, {}, m.from_memory || other->second->from_memory, {}});
        add_sources(result.points.back().sources, *first, m);
        add_sources(result.points.back().sources, *second, *other->second);
        merits.emplace_back(turned(m.place.median, first->best_high),
                            turned(other->second->place.median, second->best_high));
    }
    const std::vector<bool> front = front_of(merits);
    for (std::size_t i = 0; i < result.points.size(); ++i) {
        result.points[i].on_front = front[i];
        if (!front[i]) result.points[i].beaten_by = beater(result.points, merits, i);
    }
    std::stable_partition(result.points.begin(), result.points.end(),
                          [](const TradeoffPoint& p) { return p.on_front; });
    for (const RankResult* r : {&*first, &*second}) {
        add_new(result.excluded, r->excluded);
        add_new(result.unrankable, r->unrankable);
    }
    return result;
}

} // namespace pourbook

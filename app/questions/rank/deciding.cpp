#include "questions/rank/deciding.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

struct Part {
    std::string property;
    std::vector<std::size_t> inputs;
    double taken_over = 0, given_up = 0; // gain of the worse metal, loss of the better one
    double weight() const { return (taken_over + given_up) / 2; }
    bool helps() const { return taken_over > 0 && given_up > 0; }
    bool hinders() const { return taken_over < 0 && given_up < 0; }
};

std::vector<Part> parts_of(const std::vector<RankInput>& inputs) {
    const bool one = has_melting_range(inputs);
    std::vector<Part> out;
    Part range{"liquidus", {}};
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const std::string& id = inputs[i].property;
        if (one && (id == "solidus" || id == "liquidus"))
            range.inputs.push_back(i);
        else
            out.push_back({id, {i}});
    }
    if (one) out.push_back(range);
    return out;
}

/// How much better `now` is than `before`.
double gain(double now, double before, bool by_ratio, bool best_high) {
    const double change = by_ratio ? std::log(now / before) : now - before;
    return std::isfinite(change) ? (best_high ? change : -change) : 0;
}

double with_swapped(const Merit& merit, std::vector<double> values, const std::vector<double>& from, const Part& part) {
    for (const std::size_t i : part.inputs) values[i] = from[i];
    return merit.value(values);
}

std::vector<std::string> weightiest(std::vector<Part> parts, double least) {
    std::stable_sort(parts.begin(), parts.end(),
                     [](const Part& a, const Part& b) { return std::abs(a.weight()) > std::abs(b.weight()); });
    std::vector<std::string> out;
    for (const Part& p : parts)
        if (std::abs(p.weight()) >= least) out.push_back(p.property);
    return out;
}

} // namespace

bool has_melting_range(const std::vector<RankInput>& inputs) {
    const auto enters = [&](const char* id) {
        return std::any_of(inputs.begin(), inputs.end(), [&](const RankInput& i) { return i.property == id; });
    };
    return enters("solidus") && enters("liquidus");
}

Deciding deciding_inputs(const Merit& merit, bool best_high, const std::vector<RankInput>& better,
                         const std::vector<RankInput>& worse) {
    const std::vector<double> good = nominal(better), bad = nominal(worse);
    const double best = merit.value(good), least = merit.value(bad);
    std::vector<Part> parts = parts_of(better);
    bool by_ratio = best > 0 && least > 0;
    for (Part& p : parts) {
        p.taken_over = with_swapped(merit, bad, good, p);
        p.given_up = with_swapped(merit, good, bad, p);
        by_ratio = by_ratio && p.taken_over > 0 && p.given_up > 0;
    }
    std::vector<Part> help, hinder;
    double most = 0;
    for (Part& p : parts) {
        p.taken_over = gain(p.taken_over, least, by_ratio, best_high);
        p.given_up = gain(best, p.given_up, by_ratio, best_high);
        if (p.helps()) help.push_back(p);
        if (p.hinders()) hinder.push_back(p);
        if (p.helps()) most = std::max(most, p.weight());
    }
    if (help.empty()) return {};
    Deciding out{weightiest(help, most / 2), weightiest(hinder, most / 10)};
    out.helps.resize(std::min<std::size_t>(out.helps.size(), 2));
    return out;
}

} // namespace pourbook

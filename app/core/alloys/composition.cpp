#include "core/alloys/composition.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double lowest_sum = 99.9 - 1e-9, highest_sum = 100.1 + 1e-9;

void add_up_doubles(std::vector<Share>& shares) {
    std::vector<Share> merged;
    for (const Share& s : shares) {
        const auto it =
            std::find_if(merged.begin(), merged.end(), [&](const Share& m) { return m.element == s.element; });
        if (it == merged.end())
            merged.push_back(s);
        else
            it->wt_percent += s.wt_percent;
    }
    shares = std::move(merged);
}

/// Turns one measure into the other: amount_i * factor_i, scaled to 100.
template <class Get, class Set, class Factor>
void convert(std::vector<Share>& shares, Get get, Set set, Factor factor) {
    double sum = 0;
    for (const Share& s : shares) sum += get(s) * factor(s);
    for (Share& s : shares) set(s) = 100 * get(s) * factor(s) / sum;
}

} // namespace

double Composition::wt(const std::string& element) const {
    for (const Share& s : shares_)
        if (s.element == element) return s.wt_percent;
    return 0;
}

double Composition::at(const std::string& element) const {
    for (const Share& s : shares_)
        if (s.element == element) return s.at_percent;
    return 0;
}

Result<Composition> composition_of(const AlloyData& data, std::vector<Share> shares, bool atomic) {
    if (shares.empty()) return unreadable("no element is named: write such as \"Ag 92.5 Cu 7.5\"");
    add_up_doubles(shares);
    if (shares.size() == 1 && shares[0].wt_percent == 0) shares[0].wt_percent = 100;
    double sum = 0;
    for (const Share& s : shares) {
        if (!data.mass(s.element))
            return Problem{Problem::Kind::unknown,
                           "unknown element '" + s.element + "': write chemical symbols, such as Ag or Cu", 0};
        if (!(s.wt_percent >= 0) || !std::isfinite(s.wt_percent))
            return unreadable(s.element + " " + trimmed(s.wt_percent, 6) + " %: a share can't be negative");
        sum += s.wt_percent;
    }
    if (sum < lowest_sum || sum > highest_sum)
        return unreadable("the composition sums to " + trimmed(sum, 6) +
                          " %: it must be 100 (99.9 to 100.1); correct the shares or write the balance out");
    std::erase_if(shares, [](const Share& s) { return s.wt_percent == 0; });
    const auto mass = [&](const Share& s) { return data.mass(s.element)->g_per_mol; };
    for (Share& s : shares) s.wt_percent *= 100 / sum;
    if (atomic) {
        for (Share& s : shares) s.at_percent = s.wt_percent;
        convert(
            shares, [](const Share& s) { return s.at_percent; }, [](Share& s) -> double& { return s.wt_percent; },
            mass);
    } else {
        convert(
            shares, [](const Share& s) { return s.wt_percent; }, [](Share& s) -> double& { return s.at_percent; },
            [&](const Share& s) { return 1 / mass(s); });
    }
    std::stable_sort(shares.begin(), shares.end(),
                     [](const Share& x, const Share& y) { return x.wt_percent > y.wt_percent; });
    Composition c;
    c.host_ = std::max_element(shares.begin(), shares.end(), [](const Share& x, const Share& y) {
                  return x.at_percent < y.at_percent;
              })->element;
    c.shares_ = std::move(shares);
    return c;
}

Result<Composition> with_additions(const AlloyData& data, const Composition& base,
                                   const std::vector<Share>& additions) {
    double added = 0;
    for (const Share& a : additions) added += a.wt_percent;
    if (!(added < 100)) return Problem{Problem::Kind::unreadable, "the additions leave nothing of the metal", 0};
    std::vector<Share> all;
    for (const Share& s : base.shares()) all.push_back({s.element, s.wt_percent * (100 - added) / 100, 0});
    for (const Share& a : additions) all.push_back({a.element, a.wt_percent, 0});
    return composition_of(data, all);
}

} // namespace pourbook

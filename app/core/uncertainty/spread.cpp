#include "core/uncertainty/spread.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace pourbook {
namespace {

/// A place in the order between two whole ones, as quantile() takes it.
struct PlaceBetween {
    std::size_t whole = 0;
    double beyond = 0;

    PlaceBetween(double share, std::size_t count) {
        const double at = share * static_cast<double>(count - 1);
        whole = static_cast<std::size_t>(at);
        beyond = at - static_cast<double>(whole);
    }
};

/// The samples sorted into drawers of equal width from the lowest to the highest. The numbers at the wanted places of
/// the order lie in few of them, and only what lies there is put in order.
class Drawers {
public:
    Drawers(const std::vector<double>& samples, double lowest, double highest)
        : samples_(samples), drawer_of_(samples.size()) {
        const double width = (highest - lowest) / count;
        const double per_width = width > 0 && std::isfinite(1 / width) ? 1 / width : 0; // all alike: one drawer
        for (std::size_t s = 0; s < samples.size(); ++s) {
            const auto drawer = static_cast<std::size_t>((samples[s] - lowest) * per_width);
            drawer_of_[s] = static_cast<std::uint8_t>(std::min(drawer, count - 1));
            ++first_in_[drawer_of_[s] + 1];
        }
        for (std::size_t d = 0; d < count; ++d) first_in_[d + 1] += first_in_[d];
    }

    void want(std::size_t place) { wanted_[drawer_at(place)] = true; }

    /// Once all that is wanted is told.
    void open() {
        for (std::size_t s = 0; s < samples_.size(); ++s)
            if (wanted_[drawer_of_[s]]) inside_.push_back(samples_[s]);
        std::sort(inside_.begin(), inside_.end());
    }

    /// The number at a wanted place of the order, 0 the lowest.
    double at(std::size_t place) const {
        const std::size_t drawer = drawer_at(place);
        std::size_t before = 0; // in wanted drawers of lower numbers
        for (std::size_t d = 0; d < drawer; ++d)
            if (wanted_[d]) before += first_in_[d + 1] - first_in_[d];
        return inside_[before + place - first_in_[drawer]];
    }

private:
    static constexpr std::size_t count = 256;

    std::size_t drawer_at(std::size_t place) const {
        const auto next = std::upper_bound(first_in_.begin(), first_in_.end(), place);
        return static_cast<std::size_t>(next - first_in_.begin()) - 1;
    }

    const std::vector<double>& samples_;
    std::vector<std::uint8_t> drawer_of_;
    std::array<std::size_t, count + 1> first_in_{}; // place in the order of a drawer's first number
    std::array<bool, count> wanted_{};
    std::vector<double> inside_; // what lies in the wanted drawers, in order
};

} // namespace

Spread spread_of(const std::vector<double>& samples) {
    const auto [lowest, highest] = std::minmax_element(samples.begin(), samples.end());
    const std::size_t last = samples.size() - 1;
    const std::array<PlaceBetween, 3> places = {
        {{0.05, samples.size()}, {0.5, samples.size()}, {0.95, samples.size()}}};
    Drawers drawers(samples, *lowest, *highest);
    for (const PlaceBetween& p : places)
        for (const std::size_t place : {p.whole, std::min(p.whole + 1, last)}) drawers.want(place);
    drawers.open();
    const auto at = [&](const PlaceBetween& p) {
        const double here = drawers.at(p.whole);
        return p.whole == last ? here : here * (1 - p.beyond) + drawers.at(p.whole + 1) * p.beyond;
    };
    return {*lowest, at(places[0]), at(places[1]), at(places[2]), *highest};
}

} // namespace pourbook

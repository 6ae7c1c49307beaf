#include "core/eddy/fall_times.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr std::size_t nodes = 10;
constexpr std::size_t few = 40; // samples that are worth their own fall

/// Where a sample stands: its conductivity, its drag against its weight, its length, all as logarithms.
struct Place {
    double conductivity, strength, length;
};

class FallTable {
public:
    FallTable(const DropModel& model, const std::vector<Place>& places) : model_(model) {
        double low = INFINITY, high = -INFINITY;
        for (const Place& p : places) {
            low = std::min(low, p.conductivity + p.strength);
            high = std::max(high, p.conductivity + p.strength);
        }
        middle_ = (low + high) / 2;
        half_ = std::max((high - low) / 2, 1e-6);
        for (std::size_t j = 0; j < nodes; ++j) value_[j] = ln_time({middle_ + half_ * node(j), 0, 0});
        constexpr double step = 5e-3;
        const auto slope = [&](double more, double strength, double length) {
            return (ln_time({middle_ + more * step, strength * step, length * step}) -
                    ln_time({middle_ - more * step, -strength * step, -length * step})) /
                   (2 * step);
        };
        by_strength_ = slope(0, 1, 0) - slope(1, 0, 0);
        by_length_ = slope(0, 0, 1);
    }

    double time(const Place& p) const {
        return std::exp(interpolated((p.conductivity + p.strength - middle_) / half_) + by_strength_ * p.strength +
                        by_length_ * p.length);
    }

private:
    static double node(std::size_t j) { return std::cos(std::numbers::pi * (static_cast<double>(j) + 0.5) / nodes); }

    double ln_time(const Place& p) const {
        Variation v = model_.nominal();
        v.drag *= std::exp(p.strength);
        v.tube_length_m *= std::exp(p.length);
        return std::log(model_.fall(model_.setup(std::exp(p.conductivity), v)).time_s);
    }

    /// Barycentric interpolation on Chebyshev nodes of the first kind.
    double interpolated(double x) const {
        double above = 0, below = 0;
        for (std::size_t j = 0; j < nodes; ++j) {
            const double gap = x - node(j);
            if (std::abs(gap) < 1e-14) return value_[j];
            const double weight =
                (j % 2 ? -1 : 1) * std::sin(std::numbers::pi * (static_cast<double>(j) + 0.5) / nodes) / gap;
            above += weight * value_[j];
            below += weight;
        }
        return above / below;
    }

    const DropModel& model_;
    double middle_ = 0, half_ = 0, by_strength_ = 0, by_length_ = 0;
    std::array<double, nodes> value_{};
};

} // namespace

std::vector<double> fall_times_s(const DropModel& model, const std::vector<double>& conductivities,
                                 const std::vector<Variation>& variations) {
    std::vector<double> times(variations.size());
    if (times.size() <= few) {
        for (std::size_t i = 0; i < times.size(); ++i)
            times[i] = model.fall(model.setup(conductivities[i], variations[i])).time_s;
        return times;
    }
    const Variation& nominal = model.nominal();
    std::vector<Place> places;
    for (std::size_t i = 0; i < times.size(); ++i) {
        const Variation& v = variations[i];
        places.push_back({std::log(conductivities[i]), std::log(v.drag / nominal.drag * nominal.mass_kg / v.mass_kg),
                          std::log(v.tube_length_m / nominal.tube_length_m)});
    }
    const FallTable table(model, places);
    for (std::size_t i = 0; i < times.size(); ++i) {
        const FallSetup own = model.setup(conductivities[i], variations[i]);
        times[i] = std::max(table.time(places[i]), own.free_fall_time_s());
    }
    return times;
}

} // namespace pourbook::eddy

// Rings of a wall of several parts: no two need be alike, so that all couplings are worked out one by one.
#include "core/eddy/symmetric_eigen.hpp"
#include "core/eddy/wall_modes.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::eddy {
namespace {

constexpr double most_rings = 110, rings_a_bore = 5, depths_a_bore = 10; // bore radius, that is

struct PartRing {
    RingSection ring;
    double root; // of its resistance where the tube itself has 1 S/m
};

double rings_along(const WallPart& part, double height_m) {
    return std::max(1.0, std::ceil((part.to_m - part.from_m) / height_m * (1 - 1e-9)));
}

/// As high as wanted, higher where they would be too many.
double ring_height(const std::vector<WallPart>& parts, double finer) {
    double height = parts.front().bore.inner_radius_m / (rings_a_bore * finer);
    for (;; height *= 1.1) {
        double count = 0, least = 0;
        for (const WallPart& p : parts) {
            count += static_cast<double>(layers_across(p.bore, finer)) * rings_along(p, height);
            least += static_cast<double>(layers_across(p.bore, finer));
        }
        if (count <= std::max(most_rings * finer, least)) return height;
    }
}

void add_rings(std::vector<PartRing>& rings, const WallPart& part, double height_m, double finer) {
    const std::size_t layers = layers_across(part.bore, finer);
    const double along = rings_along(part, height_m), height = (part.to_m - part.from_m) / along;
    const double growth =
        std::pow(part.bore.outer_radius_m / part.bore.inner_radius_m, 1 / static_cast<double>(layers));
    double inner = part.bore.inner_radius_m;
    for (std::size_t i = 0; i < layers; ++i, inner *= growth)
        for (int k = 0; k < static_cast<int>(along); ++k) {
            const RingSection ring{inner * (1 + growth) / 2, part.from_m + (k + 0.5) * height, inner * (growth - 1),
                                   height};
            rings.push_back({ring, std::sqrt(unit_resistance(ring) / part.conductivity)});
        }
}

} // namespace

WallModes::WallModes(const Magnet& magnet, const std::vector<WallPart>& parts, double finer) {
    const double a = parts.front().bore.inner_radius_m, height = ring_height(parts, finer);
    std::vector<PartRing> rings;
    for (const WallPart& p : parts) {
        length_ = std::max(length_, p.to_m);
        add_rings(rings, p, height, finer);
    }
    const std::size_t size = rings.size();
    std::vector<double> matrix(size * size);
    for (std::size_t p = 0; p < size; ++p)
        for (std::size_t q = p; q < size; ++q)
            matrix[p * size + q] = matrix[q * size + p] =
                mutual_inductance_H(rings[p].ring, rings[q].ring) / (rings[p].root * rings[q].root);
    const SymmetricEigen e = symmetric_eigen(std::move(matrix), size);
    seconds_per_S_m_ = e.values;
    const double depths = std::ceil(depths_a_bore * finer * length_ / a);
    grid_ = length_ / depths;
    outside_ = static_cast<std::size_t>((magnet.half_length_m() + outside_bores * a) / grid_) + 2;
    places_ = static_cast<std::size_t>(depths) + 1 + 2 * outside_;
    table_.assign(places_ * size, 0);
    std::vector<double> fields(size);
    for (std::size_t place = 0; place < places_; ++place) {
        const double depth = (static_cast<double>(place) - static_cast<double>(outside_)) * grid_;
        for (std::size_t p = 0; p < size; ++p)
            fields[p] = mean_coupling(magnet, rings[p].ring, rings[p].ring.place_m - depth) / rings[p].root;
        for (std::size_t k = 0; k < size; ++k) {
            double sum = 0;
            for (std::size_t p = 0; p < size; ++p) sum += e.vectors[k * size + p] * fields[p];
            table_[place * size + k] = sum;
        }
    }
}

} // namespace pourbook::eddy

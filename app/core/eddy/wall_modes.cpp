#include "core/eddy/wall_modes.hpp"

#include "core/eddy/elliptic.hpp"
#include "core/eddy/end_effect.hpp"
#include "core/eddy/quadrature.hpp"
#include "core/eddy/symmetric_eigen.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::eddy {
namespace {

using std::numbers::pi;
constexpr int depths_a_ring = 2; // of the table

/// Fourth antiderivative of ln(distance), twice in each direction; squares' products, which cancel, left out.
double distance_kernel(double x, double y) {
    const double x2 = x * x, y2 = y * y, r2 = x2 + y2;
    if (r2 == 0) return 0;
    double sum = (6 * x2 * y2 - x2 * x2 - y2 * y2) * std::log(r2) / 48;
    if (x != 0 && y != 0) sum += (x2 * x * y * std::atan(y / x) + x * y2 * y * std::atan(x / y)) / 6;
    return sum - 25 * x2 * y2 / 48;
}

/// ln of the geometric mean distance of two rectangles with sides (w, h), centres (x, y) apart.
double ln_mean_distance(double x, double y, double w1, double h1, double w2, double h2) {
    double sum = 0;
    for (const double a : {-1.0, 1.0})
        for (const double b : {-1.0, 1.0})
            for (const double c : {-1.0, 1.0})
                for (const double d : {-1.0, 1.0})
                    sum += a * b * c * d * distance_kernel(x + (a * w1 + b * w2) / 2, y + (c * h1 + d * h2) / 2);
    return sum / (w1 * h1 * w2 * h2);
}

/// Values at the middles from means over a section that is `apart` entries long, to the fourth order; loses that many
/// entries at both ends.
std::vector<double> sharpened(const std::vector<double>& means, std::size_t apart) {
    std::vector<double> out;
    for (std::size_t i = apart; i + apart < means.size(); ++i)
        out.push_back(means[i] + (2 * means[i] - means[i - apart] - means[i + apart]) / 24);
    return out;
}

struct Layer {
    RingSection ring;
    double root; // of its resistance at 1 S/m
};

std::vector<Layer> layers_of(const Bore& bore, std::size_t count, double height) {
    const double growth = std::pow(bore.outer_radius_m / bore.inner_radius_m, 1 / static_cast<double>(count));
    std::vector<Layer> out;
    double inner = bore.inner_radius_m; // thicker outwards, where less happens
    for (std::size_t i = 0; i < count; ++i, inner *= growth) {
        const RingSection ring{inner * (1 + growth) / 2, 0, inner * (growth - 1), height};
        out.push_back({ring, std::sqrt(unit_resistance(ring))});
    }
    return out;
}

/// Mutual inductances of a ring of one layer with those of another, over the roots of resistance, by distance.
std::vector<double> inductance_line(const Layer& one, Layer other, std::size_t lengths) {
    std::vector<double> line;
    for (std::size_t d = 0; d < lengths + 4; ++d) {
        other.ring.place_m = one.ring.height_m * (static_cast<double>(d) - 2);
        line.push_back(mutual_inductance_H(one.ring, other.ring) / (one.root * other.root));
    }
    return sharpened(sharpened(line, 1), 1);
}

/// Couplings of a layer's ring with the magnet at distances of `grid` steps, from -reach to reach.
std::vector<double> field_line(const Magnet& magnet, const Layer& layer, double grid, std::size_t reach) {
    const std::size_t middle = reach + depths_a_ring;
    std::vector<double> line(2 * middle + 1);
    // Odd about the magnet's middle; even for an even number of opposed ones.
    const double other = magnet.stack.alternating && magnet.stack.pieces % 2 == 0 ? 1 : -1;
    for (std::size_t d = 0; d <= middle; ++d) {
        const double field = mean_coupling(magnet, layer.ring, grid * static_cast<double>(d)) / layer.root;
        line[middle + d] = field;
        line[middle - d] = other * field;
    }
    return sharpened(line, depths_a_ring);
}

} // namespace

double mutual_inductance_H(const RingSection& one, const RingSection& other) {
    const double x = one.radius_m - other.radius_m, y = one.place_m - other.place_m,
                 product = one.radius_m * other.radius_m;
    const double size = one.thickness_m + one.height_m + other.thickness_m + other.height_m;
    double distance2 = x * x + y * y;
    if (distance2 < 16 * size * size) // beyond, the centres' distance is the mean one to a few parts in a thousand
        distance2 =
            std::exp(2 * ln_mean_distance(x, y, one.thickness_m, one.height_m, other.thickness_m, other.height_m));
    const double k2 = 4 * product / (4 * product + distance2), k = std::sqrt(k2);
    const CompleteElliptic whole = complete_elliptic(k);
    return vacuum_permeability * std::sqrt(product) * ((2 / k - k) * whole.first - 2 / k * whole.second);
}

double mean_coupling(const Magnet& magnet, const RingSection& ring, double apart) {
    const GaussRule<2>& across = gauss_rule<2>();
    const GaussRule<3>& along = gauss_rule<3>();
    double sum = 0;
    for (std::size_t i = 0; i < 2; ++i)
        for (std::size_t j = 0; j < 3; ++j) {
            const double r = ring.radius_m + ring.thickness_m / 2 * across.node[i],
                         z = apart + ring.height_m / 2 * along.node[j];
            sum += across.weight[i] * along.weight[j] / 4 * r * radial_field_over_remanence(magnet, r, z);
        }
    return sum;
}

double unit_resistance(const RingSection& ring) {
    const double outer = ring.radius_m + ring.thickness_m / 2, inner = ring.radius_m - ring.thickness_m / 2;
    return 2 * pi / (ring.height_m * std::log(outer / inner));
}

std::size_t layers_across(const Bore& bore, double finer) {
    const double wall = std::log(bore.outer_radius_m / bore.inner_radius_m);
    return static_cast<std::size_t>(std::clamp(finer * std::ceil(wall / 0.25), 1.0, 8.0));
}

WallModes::WallModes(const Magnet& magnet, const Bore& bore, double tube_length_m, double finer)
    : length_(tube_length_m) {
    const double a = bore.inner_radius_m;
    const std::size_t count = layers_across(bore, finer);
    const double wanted = std::clamp(std::ceil(5 * tube_length_m / a), 14.0, 150.0 / static_cast<double>(count));
    lengths_ = 2 * static_cast<std::size_t>(finer * wanted / 2);
    const double height = tube_length_m / static_cast<double>(lengths_);
    grid_ = height / depths_a_ring;
    outside_ = static_cast<std::size_t>((magnet.half_length_m() + outside_bores * a) / grid_) + 2;
    places_ = lengths_ * depths_a_ring + 1 + 2 * outside_;
    const std::vector<Layer> layers = layers_of(bore, count, height);
    std::vector<std::vector<double>> lines, fields;
    for (const Layer& one : layers) {
        for (const Layer& other : layers) lines.push_back(inductance_line(one, other, lengths_));
        fields.push_back(field_line(magnet, one, grid_, places_));
    }
    make_table(fields, made_modes(lines, count));
}

/// Symmetric and antisymmetric currents about the middle don't couple: two problems of half the size.
std::vector<double> WallModes::made_modes(const std::vector<std::vector<double>>& lines, std::size_t layers) {
    const std::size_t half = lengths_ / 2, size = layers * half;
    std::vector<double> modes;
    for (const double sign : {1.0, -1.0}) {
        std::vector<double> matrix(size * size);
        for (std::size_t p = 0; p < size; ++p)
            for (std::size_t q = 0; q < size; ++q) {
                const std::vector<double>& line = lines[p / half * layers + q / half];
                const std::size_t m = p % half, n = q % half;
                matrix[p * size + q] = line[m > n ? m - n : n - m] + sign * line[lengths_ - 1 - n - m];
            }
        const SymmetricEigen e = symmetric_eigen(std::move(matrix), size);
        seconds_per_S_m_.insert(seconds_per_S_m_.end(), e.values.begin(), e.values.end());
        modes.insert(modes.end(), e.vectors.begin(), e.vectors.end());
    }
    return modes;
}

/// Rings lie at (n + 1/2) heights, depths of the table at halves of one.
void WallModes::make_table(const std::vector<std::vector<double>>& fields, const std::vector<double>& modes) {
    const std::size_t half = lengths_ / 2, size = fields.size() * half;
    table_.assign(places_ * 2 * size, 0);
    std::vector<double> even(size), odd(size);
    for (std::size_t place = 0; place < places_; ++place) {
        for (std::size_t p = 0; p < size; ++p) {
            const std::size_t n = p % half, mirror = lengths_ - 1 - n;
            const double* field = &fields[p / half][places_];
            const auto at = [&](std::size_t r) {
                return field[static_cast<std::ptrdiff_t>(r * depths_a_ring + depths_a_ring / 2) -
                             (static_cast<std::ptrdiff_t>(place) - static_cast<std::ptrdiff_t>(outside_))];
            };
            even[p] = (at(n) + at(mirror)) / std::numbers::sqrt2;
            odd[p] = (at(n) - at(mirror)) / std::numbers::sqrt2;
        }
        double* out = &table_[place * 2 * size];
        for (std::size_t k = 0; k < 2 * size; ++k) {
            const double* mode = &modes[k * size];
            const std::vector<double>& source = k < size ? even : odd;
            double sum = 0;
            for (std::size_t p = 0; p < size; ++p) sum += mode[p] * source[p];
            out[k] = sum;
        }
    }
}

void WallModes::couplings(double depth, double tube_length, std::vector<double>& out) const {
    out.assign(count(), 0);
    const double x = depth * length_ / tube_length / grid_ + static_cast<double>(outside_);
    if (!(x >= 0 && x < static_cast<double>(places_ - 1))) return;
    const auto low = std::clamp(static_cast<std::size_t>(x), std::size_t{1}, places_ - 3);
    const double t = x - static_cast<double>(low);
    // Cubic through the four depths around it (Lagrange).
    const double w[4] = {-t * (t - 1) * (t - 2) / 6, (t + 1) * (t - 1) * (t - 2) / 2, -(t + 1) * t * (t - 2) / 2,
                         (t + 1) * t * (t - 1) / 6};
    for (std::size_t i = 0; i < 4; ++i) {
        const double* row = &table_[(low - 1 + i) * count()];
        for (std::size_t k = 0; k < count(); ++k) out[k] += w[i] * row[k];
    }
}

} // namespace pourbook::eddy

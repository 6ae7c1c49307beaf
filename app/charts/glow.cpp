#include "charts/glow.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr double draper_K = 798, full_K = 1500;
constexpr double second_radiation_nm_K = 1.438776877e7; // hc/k, exact by the SI of 2019

double lobe(double nm, double centre, double below, double above) {
    const double t = (nm - centre) / (nm < centre ? below : above);
    return std::exp(-t * t / 2);
}

std::array<double, 3> observer(double nm) {
    return {1.056 * lobe(nm, 599.8, 37.9, 31.0) + 0.362 * lobe(nm, 442.0, 16.0, 26.7) -
                0.065 * lobe(nm, 501.1, 20.4, 26.2),
            0.821 * lobe(nm, 568.8, 46.9, 40.5) + 0.286 * lobe(nm, 530.9, 16.3, 31.1),
            1.217 * lobe(nm, 437.0, 11.8, 36.0) + 0.681 * lobe(nm, 459.0, 26.0, 13.8)};
}

/// In units of their sum.
std::array<double, 3> tristimulus(double temperature_K) {
    constexpr double from_nm = 380, to_nm = 780, step_nm = 2;
    std::array<double, 3> sum{};
    for (double nm = from_nm; nm <= to_nm; nm += step_nm) {
        const double power = std::pow(nm / 560, -5) / std::expm1(second_radiation_nm_K / (nm * temperature_K));
        const std::array<double, 3> seen = observer(nm);
        for (std::size_t i = 0; i < 3; ++i) sum[i] += power * seen[i];
    }
    const double all = sum[0] + sum[1] + sum[2];
    for (double& part : sum) part /= all;
    return sum;
}

std::uint8_t byte_of(double linear) {
    const double clipped = std::clamp(linear, 0.0, 1.0);
    const double bent = clipped <= 0.0031308 ? 12.92 * clipped : 1.055 * std::pow(clipped, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(255 * bent));
}

} // namespace

Chromaticity black_body(double temperature_K) {
    const std::array<double, 3> t = tristimulus(temperature_K);
    return {t[0], t[1]};
}

Colour glow(double temperature_K) {
    const auto [X, Y, Z] = tristimulus(std::max(temperature_K, draper_K));
    std::array<double, 3> rgb = {3.2406 * X - 1.5372 * Y - 0.4986 * Z, -0.9689 * X + 1.8758 * Y + 0.0415 * Z,
                                 0.0557 * X - 0.2040 * Y + 1.0570 * Z};
    const double most = *std::max_element(rgb.begin(), rgb.end());
    const double seen = std::clamp((temperature_K - draper_K) / (full_K - draper_K), 0.0, 1.0);
    for (double& part : rgb) part = part / most * seen;
    return {byte_of(rgb[0]), byte_of(rgb[1]), byte_of(rgb[2])};
}

} // namespace pourbook

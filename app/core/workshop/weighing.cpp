#include "core/workshop/weighing.hpp"

#include <array>
#include <cmath>
#include <limits>

namespace pourbook {
namespace {

constexpr double air_kg_m3 = 1.2, air_half_kg_m3 = 0.1;
constexpr double tap_half_kg_m3 = 0.2;       // what is dissolved in it
constexpr double clinging_half_m3 = 0.05e-6; // bubbles, thread

double even(double half_width) {
    return half_width / std::sqrt(3.0);
}

double density(double air_kg, double water_kg, double water_kg_m3, double in_air_kg_m3) {
    return (air_kg * water_kg_m3 - water_kg * in_air_kg_m3) / (air_kg - water_kg);
}

} // namespace

double water_density_kg_m3(double temperature_K) {
    const double t = temperature_K - 273.15;
    if (!(t >= 0 && t <= 100)) return std::numeric_limits<double>::quiet_NaN();
    constexpr std::array c = {999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12};
    double sum = 0;
    for (std::size_t i = c.size(); i-- > 0;) sum = sum * t + c[i];
    return sum / (1 + 16.879850e-3 * t);
}

Result<WeighedDensity> density_in_water(const Weighing& w) {
    const double water = water_density_kg_m3(w.water_K);
    if (std::isnan(water)) return refused("water between 0 and 100 degC is expected");
    if (!(w.water_kg < w.air_kg && w.air_kg > 0))
        return refused("in water it must weigh less than in air: was it hanging clear, the tray set to nought?");
    const double rho = density(w.air_kg, w.water_kg, water, air_kg_m3);
    const double lift_kg = w.air_kg - w.water_kg, volume = lift_kg / (water - air_kg_m3);
    const auto changed = [&](double air, double in_water, double of_water, double of_air) {
        return density(w.air_kg + air, w.water_kg + in_water, water + of_water, air_kg_m3 + of_air) - rho;
    };
    const double warmer = water_density_kg_m3(std::min(w.water_K + w.water_half_K, 373.15)) - water;
    double variance = 0;
    for (const double part : {changed(w.air_half_kg, 0, 0, 0), changed(0, w.water_half_kg, 0, 0),
                              changed(0, -clinging_half_m3 * water, 0, 0), changed(0, 0, warmer, 0),
                              changed(0, 0, tap_half_kg_m3, 0), changed(0, 0, 0, air_half_kg_m3)})
        variance += std::pow(even(part), 2);
    return WeighedDensity{rho, std::sqrt(variance), volume};
}

} // namespace pourbook

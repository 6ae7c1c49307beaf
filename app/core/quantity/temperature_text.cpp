#include "core/quantity/temperature_text.hpp"

#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {

std::string celsius_text(double kelvin) {
    constexpr double ice_point_K = 273.15, deep_cold_K = 73.15;
    if (kelvin < deep_cold_K) return trimmed(kelvin, 4) + " K";
    const double tenths = std::round(10 * (kelvin - ice_point_K)) / 10;
    return trimmed(tenths == 0 ? 0 : tenths, 6) + " °C";
}

} // namespace pourbook

#include "core/quantity/temperature_text.hpp"

#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {

std::string celsius_text(double kelvin) {
    constexpr double ice_point_K = 273.15;
    if (kelvin < spoken_in_kelvin_below_K) return trimmed(kelvin, 5) + " K";
    const double tenths = std::round(10 * (kelvin - ice_point_K)) / 10;
    return trimmed(tenths == 0 ? 0 : tenths, 6) + " °C";
}

} // namespace pourbook

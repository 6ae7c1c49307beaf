// Monotone cubic interpolation through the points of one published series.
// Range: first to last temperature, which must rise. Source: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238,
// with the harmonic-mean slopes of Brodlie as given there; no overshoot between points, so a rising series stays
// rising.
#pragma once

#include "core/materials/record.hpp"

#include <vector>

namespace pourbook {

using Points = std::vector<const Point*>;

struct Interpolated {
    double value_si = no_number;
    double doubt_si = 0;      // half the distance to the straight line between the neighbours
    double half_digit_si = 0; // rounding of the print
};

/// Points with a value and a temperature only. A temperature outside is taken at the nearest end.
Interpolated interpolate(const Points& points, double temperature_K);
Interpolated interpolate(const std::vector<Point>& points, double temperature_K);

} // namespace pourbook

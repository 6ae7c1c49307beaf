// Lines of equal value through a grid of values (marching squares, straight between the crossings of a cell's sides).
#pragma once

#include "charts/scene.hpp"

#include <vector>

namespace pourbook {

/// Values at x[i], y[j] with x first: value[j * x.size() + i]; both rising. Each line runs from edge to edge, or is
/// closed (its first spot is its last).
std::vector<std::vector<Spot>> contour(const std::vector<double>& x, const std::vector<double>& y,
                                       const std::vector<double>& value, double level);

} // namespace pourbook

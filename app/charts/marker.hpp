// Marks that differ in shape as well as colour.
#pragma once

#include "charts/scene.hpp"

#include <cstddef>

namespace pourbook {

/// Six shapes in turn, with the eight colours of the series.
constexpr std::size_t different_marks = 24;

void add_marker(Scene& scene, std::size_t slot, Spot centre, double radius, Colour colour, bool filled = true);

} // namespace pourbook

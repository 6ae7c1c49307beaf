// Marks that differ in shape as well as colour.
#pragma once

#include "charts/scene.hpp"

#include <cstddef>

namespace pourbook {

/// Six shapes in turn; with the eight colours of the series the pairs repeat after 24 slots.
void add_marker(Scene& scene, std::size_t slot, Spot centre, double radius, Colour colour, bool filled = true);

} // namespace pourbook

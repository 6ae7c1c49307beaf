// Cautions for tubes that are cooled with liquid nitrogen or dry ice, from the reference.
#pragma once

#include "core/materials/catalogue.hpp"

#include <vector>

namespace pourbook {

/// A tube below this was cooled with one of these: no freezer of a household reaches it.
constexpr double cold_bath_below_K = 230;

std::vector<const MagnetFigure*> cold_cautions(const Catalogue& catalogue);

} // namespace pourbook

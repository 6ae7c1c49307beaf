// Whole set-ups as people read them, in the chosen units; both fronts use them.
#pragma once

#include "questions/drop/magnet_words.hpp"
#include "questions/drop/wall_words.hpp"
#include "questions/say/amounts.hpp"

#include <string>

namespace pourbook {

/// "cylinder 12 x 10 mm, N42, 1.30 T".
std::string magnet_text(const DropSetup& setup, UnitSystem units);
/// "bore 13 mm, outside 15 mm, length 1000 mm".
std::string tube_text(const eddy::DropInputs& inputs, UnitSystem units);
/// "copper, annealed, 1.68 uohm.cm (102.6 %IACS) at 20 °C".
std::string metal_text(const TubeMetal& tube, const Conditions& conditions, UnitSystem units);
/// "bore 12 mm, outside 13 mm, length 400 mm; brass, annealed ...".
std::string piece_text(const WallPiece& piece, const Conditions& conditions, UnitSystem units);

} // namespace pourbook

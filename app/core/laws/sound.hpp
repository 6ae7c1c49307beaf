// Speed of sound along a thin rod: v = sqrt(E / density), Young's modulus and density at room temperature.
// Range: a rod much thinner than the wave is long, small strains, a metal alike in all directions; in the bulk sound is
// some 20 to 50 % faster. SI units. Source: Lord Rayleigh, The Theory of Sound, vol. 1, art. 150. Error: 3 %, measured
// on eighteen rods of a handbook: median 2 %, sixteen within 3.5 % (tin 10 %, grey iron 16 %).
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors: no_value where the modulus or the density is not known.
Result<Evaluated> speed_of_sound_by_law(const Question& question);

} // namespace pourbook

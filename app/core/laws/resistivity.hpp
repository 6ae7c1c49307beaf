// Resistivity carried along the temperature (solid), and from composition where nothing is cited.
//
// A pure metal beyond the end of its cited figures: Bloch's shape through the nearest of them (debye.hpp); iron, nickel
// and cobalt not across their Curie points.
// An alloy: Matthiessen's rule (A. Matthiessen, C. Vogt, Ann. Phys. 122, 1864, 19) with the deviation from it and
// saturation,
//   1/rho = 1/r + 1/r_sat,   r = h + x + c h x/(h + x),
// h the host's resistivity at the temperature, x the excess of the alloy, which does not depend on temperature and
// follows from the nearest cited figure; c = 0.5 the deviation (form of M. Kohler, Z. Phys. 126, 1949, 495: none where
// either part is small); r_sat = 150 uohm cm, 500 for iron's alloys (whose spins add
// what saturation takes) (O. Gunnarsson, M. Calandra, J. Han, Rev. Mod. Phys. 75, 2003, 1085; form
// of H. Wiesmann et al., Phys. Rev. Lett. 38, 1977, 782). x is never negative.
// Without a cited figure: the estimate at 20 degC from composition (core/alloys/resistivity), carried the same way.
// How far saturation goes, and what the spins of iron, nickel and cobalt add in their alloys, is in the error.
// Where a cited temperature coefficient stops carrying, the law goes on from there.
// Valid from 1 K to the solidus; not for semiconductors. The melt of a pure metal: nearest cited figure, 2.5e-4 per
// kelvin. Its own errors: constants below, measured by tests/laws/left_out.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors: no_value.
Result<Evaluated> resistivity_by_law(const Question& question);

/// (1/rho) d rho/dT along the law's curve through the nearest cited figure, 1/K.
Result<Evaluated> temperature_coefficient_by_law(const Question& question);

} // namespace pourbook

// Interpolation of a resistivity between two points on either side of a Curie point.
// Below it the spins' disorder adds a growing share, above it that share stands still, so the curve has a knee there
// and no straight line crosses it. The knee is put where the slope below, `steeper` times that of the interval before
// (iron, nickel: the slope grows up to the knee; our estimate), meets the Curie point; from there straight to the upper
// point. Measured on iron and nickel against a handbook's points: within 6 %, taken as the doubt.
#pragma once

#include "core/evaluate/candidate.hpp"
#include "core/evaluate/interpolate.hpp"

namespace pourbook {

/// Changes the value and doubt of an interpolated resistivity where the metal's cited Curie point lies between the
/// points.
void across_curie_point(Candidate& candidate, const Points& points, const Question& question);

} // namespace pourbook

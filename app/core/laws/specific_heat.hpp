// Specific heat where nothing is cited at the temperature.
//
// A pure metal: Debye's curve (debye.hpp) with the electrons' linear part,
//   c = (3 R D(T/theta) + gamma T)/M,
// joined to the nearest cited figure: scaled by figure/curve there, the scale fading to 1 in proportion to T towards
// absolute zero; theta is 13 % lower than at absolute zero from 0.15 theta up; above the cited figures the scale stays
// and a rise of 2.5e-4 per kelvin beyond 20 degC is added (what evaluated curves of copper, silver, gold and aluminium
// show between 300 K and their melting points: 2 to 4e-4). An alloy: Neumann and Kopp's rule (F. Neumann 1831, H. Kopp
// 1864), c = sum w_i c_i of its elements at the temperature, scaled to the nearest cited figure of the alloy where
// there is one; elements of at most 3 % together may be without data, 5 % where it is scaled (the graphite of cast
// irons), their share as an error. The melt: nearest cited figure (it changes
// little), an alloy's by the same sum over the melts of its elements. Valid from 1 K; no magnetic peak at a Curie point
// is modelled. Own errors: constants in the file, measured by tests/laws/left_out.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors: no_value.
Result<Evaluated> specific_heat_by_law(const Question& question);

} // namespace pourbook

// Linear expansion and density along the temperature.
//
// Grueneisen's rule (E. Grueneisen, Ann. Phys. 39, 1912, 257): the coefficient goes as the lattice's heat,
//   alpha(T) = alpha(20 degC) D(T/theta)/D(293 K/theta) (1 + 0.55 (T - 293 K)/T_solidus above 20 degC),
// D Debye's curve of the host (debye.hpp); the last factor is the rise that evaluated curves of copper, silver,
// tungsten and aluminium show. The mean from 20 degC is its integral. Both go through the nearest cited figure, of
// either kind; without one the coefficient at 20 degC is estimated from composition (core/alloys/expansion). Density:
// d(T) = d(T0) ((1 + e(T0))/(1 + e(T)))^3, e the linear strain from 20 degC, carried from the cited figure nearest in
// temperature; without one from composition (core/alloys/density). Valid from 1 K to the solidus, without
// transformations in the solid. Own errors: constants in the file, measured by tests/laws/left_out.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Mean from 20 degC, or the coefficient there, as the question's property says. Errors: no_value.
Result<Evaluated> expansion_by_law(const Question& question);

/// Of the solid. Errors: no_value.
Result<Evaluated> density_by_law(const Question& question);

} // namespace pourbook

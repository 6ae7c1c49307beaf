// Pouring temperature and patternmaker's allowance of a metal without a printed figure of its own.
// Pouring temperature: the printed range of its family's practice, its lower end not below the liquidus; else the
// liquidus plus the common superheat. Allowance: its family's practice unless that is more than twice the free
// contraction from the solidus to 20 degC (mean expansion times the interval); then, or without practice, that
// contraction, which a mould that holds the casting makes smaller.
// Range: as the practice (db/casting). Uncertainty: half the range over sqrt 3.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors of both: no_value.
Result<Evaluated> pouring_temperature_by_law(const Question& question);
Result<Evaluated> contraction_allowance_by_law(const Question& question);

} // namespace pourbook

// The laws that answer where nothing is cited, one small file each; this one knows which law answers which property.
// Every law carries a cited figure further (Basis::carried) or estimates from composition (Basis::estimated), says so
// in the trail, and has an error measured by leaving out each cited point it could have predicted (tests/laws/left_out,
// table in the help page "laws"). None reaches below 1 K or more than 600 K above the liquidus.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors: no_value, with the reason why no law reaches.
Result<Evaluated> law_answer(const Question& question);

} // namespace pourbook

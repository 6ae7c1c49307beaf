// The answer that published records alone give: the first of their sayings (candidate.hpp says which), with the
// uncertainty of that source and of its disagreement with the others.
//
// Between the points of one series: monotone cubic interpolation (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 238,
// 1980); half its distance from the straight line is added to the uncertainty. Never beyond the ends of a series (2 K
// are allowed, the size of differences between temperature scales and of nominal bath temperatures).
//
// Standard uncertainty: as stated by the source, else the default for property and kind of source (flagged;
// default_uncertainty.hpp); never below half the last printed digit over sqrt 3; widened to half the largest distance
// to another usable source at that temperature which is not explained by two of that source's own standard
// uncertainties; another condition than the asked one adds the dictionary's condition spread, and the value counts as
// carried.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors: no_value, out_of_range (with the cited range).
Result<Evaluated> cited_answer(const Question& question);

/// Standard uncertainty of one record's answer, before the spread among sources; whether the source states none.
double own_uncertainty(const Candidate& candidate, const Question& question, bool& assumed);

} // namespace pourbook

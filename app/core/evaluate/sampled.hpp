// The samples of an evaluated value.
// Every cause of uncertainty is drawn once and shared by all that name it; a value, or each of its terms, moves by the
// exponential of its deviation (log_spread), so it never changes sign and its median stays. What is drawn between two
// ends (a content, a porosity) is even there.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/uncertainty/draws.hpp"

namespace pourbook {

std::vector<double> sampled(const Evaluated& value, Draws& draws);

/// The value with nothing varied, of a value with terms.
double nominal_of_terms(const Evaluated& value);

/// The causes with the share of the value that each moves, to first order.
std::vector<Cause> weighted_causes(const Evaluated& value);

/// The value where one quantity that is drawn between two ends is this amount instead.
Evaluated with_fixed(Evaluated value, const std::string& key, double amount);

} // namespace pourbook

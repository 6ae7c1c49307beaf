// The person's own castings speak: what was measured on castings of a metal weights the draws of that metal's
// conductivity.
//
// Each draw of the metal's casting has a conductivity m. A casting's own is m exp(scatter z), the measurement adds its
// error: the weight of a draw is the normal density of all ln(measured / m) together, with the variance scatter^2 + u^2
// of each and the covariance of what trials with the same magnet share (importance weights). The next casting has the
// mean and spread of the weighted draws, with the scatter of its own. Scatter between castings of one shop:
// db/casting/state.json.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <optional>
#include <vector>

namespace pourbook {

/// The person's trials of a metal; none where they are switched off or the answer is for the handbook's metal.
std::vector<OwnCasting> own_castings_of(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions);

/// Relative standard deviation between castings of one metal from one shop.
double scatter_between_castings(const Catalogue& catalogue, const Metal& metal);

/// The next casting, by the trials.
struct NextCasting {
    double resistivity_si = no_number; // median
    double relative = 0;               // spread of its logarithm
    double mean_relative = 0;          // of what castings of the shop have in the mean, without their scatter
};

/// `drawn_si`: draws of the resistivity at 20 degC before the trials. There is at least one trial.
NextCasting next_casting(const std::vector<OwnCasting>& trials, const std::vector<double>& drawn_si, double scatter);

} // namespace pourbook

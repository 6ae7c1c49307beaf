// The person's own castings speak: what was measured on castings of a metal weights the draws of that metal.
//
// Each draw of the metal's casting has a conductivity m. A casting's own is m exp(scatter z), the measurement adds its
// uncertainty: the weight of a draw is the product over the trials of normal densities of ln(measured / m) with the
// variance scatter^2 + u^2 (importance weights). The draws are then drawn again by their weights (systematic
// resampling, Kitagawa, J. Comput. Graph. Stat. 5, 1996, 1), and the next casting gets the scatter of its own
// (casting_value). Scatter between castings of one shop: db/casting/state.json.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/uncertainty/draws.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// The person's trials of a metal; none where they are switched off or the answer is for the handbook's metal.
std::vector<OwnCasting> own_castings_of(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions);

/// Relative standard deviation between castings of one metal from one shop.
double scatter_between_castings(const Catalogue& catalogue, const Metal& metal);

/// Lets the draws of every metal with trials follow them. Call before anything is drawn.
void follow_own_castings(const Catalogue& catalogue, const Conditions& conditions, Draws& draws);

/// Places to draw again from, by weights of any scale that are not all zero: systematic resampling from the middle of
/// each step.
std::vector<std::size_t> places_by_weight(const std::vector<double>& weights);

} // namespace pourbook

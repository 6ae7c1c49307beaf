// What the person's trials say of the castings of a metal: the conductivity of each drop or four-wire trial that names
// a metal, carried to 20 degC along that metal's curve.
#pragma once

#include "core/workshop/data.hpp"

#include <vector>

namespace pourbook {

/// Of each metal at most the newest trials (own_trials.cpp); a trial that can't be worked out is passed over, for
/// Trials shows why. Trials with the same magnet share the doubt of its strength.
std::vector<OwnCasting> castings_of_trials(const Catalogue& catalogue, const std::vector<Trial>& trials);

/// What the weighings of a metal's castings say of the pores of its next one, an entry "own_porosity" for each metal.
/// Common practice's middle and the weighings, each weighted by its spread (theirs with the scatter between castings,
/// db/casting/state.json); what is left of the spread stands to both sides. An impossible weighing says nothing.
std::vector<Practice> porosities_of_trials(const Catalogue& catalogue, const std::vector<Trial>& trials);

} // namespace pourbook

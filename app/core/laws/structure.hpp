// What a treatment does to the resistivity of an alloy from which something precipitates, by the estimates from
// composition (core/alloys/resistivity): the difference between two treatments, and how far castings cooled at
// different speeds may differ (db/casting/state.json: shares of the way to the quenched and to the aged state).
#pragma once

#include "core/alloys/estimate.hpp"
#include "core/materials/casting_state.hpp"

#include <optional>

namespace pourbook {

struct Structure {
    double change_si = 0; // to be added to a resistivity in the known treatment
    double doubt_si = 0;  // standard uncertainty of the change
    double low_si = 0;    // of castings cooled slower, on the way to the aged state; not above 0
    double high_si = 0;   // cooled faster, on the way to the quenched state
};

/// From the treatment a figure is known in to the asked one, at 20 degC. Empty where no rule estimates one of them.
std::optional<Structure> structure_between(const Catalogue& catalogue, const Metal& metal, Treatment known,
                                           Treatment asked);

/// The treatment a state names.
Treatment treatment_of(const CastingState& state);

/// The condition of a record that stands for a treatment.
const char* condition_of(Treatment treatment);

} // namespace pourbook

// What one record has to say about a property at a temperature, and which of several sayings answers.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook {

enum class Cover {
    direct,  // the record covers the temperature itself
    near,    // a single point, used within the property's reach
    carried, // a resistivity point carried by a temperature coefficient
    mean     // a mean expansion standing in for the coefficient at 20 degC
};

enum class ConditionFit { same, unstated, other };

struct Candidate {
    const Record* record = nullptr;
    double value_si = no_number;
    double recorded_si = no_number; // the same in the record's own kind (a conductivity where a resistivity is asked)
    double doubt_si = 0;            // interpolation, rounding, carrying
    Cover cover = Cover::direct;
    ConditionFit fit = ConditionFit::same;
    std::string printed; // the figure as printed, or the points used
    std::string how;     // sentence for the trail
};

struct Question {
    const Catalogue& catalogue;
    const Metal& metal;
    const Property& property;
    Phase phase = Phase::any;
    double temperature_K = room_temperature_K;
    const Conditions& conditions;
};

/// Every usable record's answer, best first.
std::vector<Candidate> candidates(const Question& question);

/// The records that speak of the property in this phase at all, whatever their temperature (for "cited range").
std::vector<const Record*> speaking_records(const Question& question);

} // namespace pourbook

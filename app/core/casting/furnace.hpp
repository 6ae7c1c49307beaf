// Time and fuel for a heat: energy / (power x efficiency), energy / (heating value x efficiency). The efficiency is the
// share of the furnace's heat that ends in the charge; a first heat also warms lining and crucible, which the printed
// ranges for small furnaces include.
#pragma once

#include "core/casting/practice.hpp"

#include <optional>

namespace pourbook::casting {

struct Firing {
    double efficiency_low = no_number, efficiency_high = no_number; // electric
    double seconds_low = no_number, seconds_high = no_number;       // NaN without a power
    double propane_kg_low = no_number, propane_kg_high = no_number;
    std::vector<SourceValue> sources;
};

/// An efficiency that is stated replaces the printed ranges.
Firing firing(const Catalogue& catalogue, const Metal& metal, double energy_J, std::optional<double> power_W,
              std::optional<double> efficiency);

} // namespace pourbook::casting

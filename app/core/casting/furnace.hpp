// Time and fuel for a heat: energy / (power x efficiency), energy / (heating value x efficiency). The efficiency is the
// share of the furnace's heat that ends in the charge. A first heat also warms lining and crucible: a small charge
// takes at least the burner's printed minutes for that. Burner times: fuel x heating value / power of small burners.
#pragma once

#include "core/casting/practice.hpp"

#include <optional>

namespace pourbook::casting {

struct Firing {
    double efficiency_low = no_number, efficiency_high = no_number; // electric
    double seconds_low = no_number, seconds_high = no_number;       // NaN without a power
    double propane_kg_low = no_number, propane_kg_high = no_number; // first heat: at least what warms the furnace
    double again_kg_low = no_number, again_kg_high = no_number;     // a next heat, the furnace hot
    double burner_s_low = no_number, burner_s_high = no_number;     // first heat
    double again_s_low = no_number, again_s_high = no_number;
    std::vector<SourceValue> sources;
};

/// The warming of the furnace goes by how hot the metal is poured, 1200 degC being a bright heat.
/// An efficiency that is stated replaces the printed ranges.
Firing firing(const Catalogue& catalogue, const Metal& metal, double energy_J, double pour_K,
              std::optional<double> power_W, std::optional<double> efficiency);

} // namespace pourbook::casting

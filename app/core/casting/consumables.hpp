// What a casting uses up beside metal: filament of the printed pattern, shell, gas; masses and what they cost.
//   filament = (surface x wall + infill x the rest) x density      shell = (surface x wall) x density of the mould
// The kiln: what a small electric one takes for a burn-out, whatever stands in it.
// Prices are ranges of the retail trade (common practice), to be replaced by one's own. The shell of gating and cup is
// counted with the metal's own share of gating.
#pragma once

#include "core/casting/practice.hpp"

namespace pourbook::casting {

struct ConsumableInputs {
    std::string process;
    double volume_m3 = 0, surface_m2 = 0; // of the casting
    double shell_wall_m = no_number;
    double gating_share = 0; // of the casting
    double propane_kg_low = no_number, propane_kg_high = no_number;
};

struct Consumables {
    Range filament_kg, shell_kg; // empty where the process has none
    Range kiln_J;                // electric kiln, burn-out and preheat; empty where nothing is fired
    double cost_low_usd = 0, cost_high_usd = 0;
    std::vector<SourceValue> sources;
};

Consumables consumables(const Catalogue& catalogue, const Metal& metal, const ConsumableInputs& inputs);

} // namespace pourbook::casting

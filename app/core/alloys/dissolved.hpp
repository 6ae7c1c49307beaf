// How much of each solute is in solid solution in the host after a treatment, and what the rest has become. Each solute
// is taken alone with the host on their binary diagram (no ternary interaction).
//   quenched        the most the solid solution holds at any temperature (solution treated, then quenched)
//   annealed, aged  the solubility at the temperature where that treatment leaves it (db/increments.json, common
//                   practice)
//   as-cast         the mean content of the cored host after freezing without diffusion (Scheil), but not more than the
//                   solubility down to which castings are known to follow precipitation (db/increments.json)
// A second metal holds of the host what the same treatment leaves in it as a host; its share is by the lever rule.
// Elements the setting names as dissolved stay so in every treatment.
// Range: solutes with a stored diagram; without one taken as dissolved, and said, below `traces_wt` per cent, or below
// `undrawn_wt` where a resistivity increment is published. Not beyond the compound next to the host's solid solution.
#pragma once

#include "core/alloys/estimate.hpp"

namespace pourbook {

constexpr double traces_wt = 1.5, undrawn_wt = 5;

struct SoluteState {
    std::string element;
    double dissolved_wt = 0;     // per cent of the whole alloy's mass
    double out_wt = 0;           // the same, out of solution
    std::string second_phase;    // empty: all is dissolved
    double second_wt_solute = 0; // per cent of the solute in the second phase
    double second_wt = 0;        // the second phase, per cent of the whole alloy's mass (lever rule)
    bool has_diagram = false;
    const Citation* citation = nullptr;
};

struct SolidState {
    std::string host;
    double host_wt = 0; // per cent of the whole alloy's mass
    std::vector<SoluteState> solutes;
    std::vector<std::string> trail;
    std::vector<Citation> sources;
};

/// Errors: no_value outside the range.
Result<SolidState> solid_state(const AlloySetting& setting);

} // namespace pourbook

// Melting range of an alloy from stored binary diagrams.
// Two elements: the diagram itself. Several: the binary of the host (largest share by mass) with its main solute, less
// what each further solute takes off the host's melting point in its own binary (effects added; for dilute solutes this
// is Raoult's law). Scheil's end of freezing is that of the main binary.
// Range: further solutes up to 12 wt% in all, each with a stored diagram or below 1 wt%, and the host freezing first.
// Where that rule does not reach, three elements or more: known alloys nearby (near_melting.hpp).
// Pure metals: the melting point.
#pragma once

#include "core/alloys/diagram.hpp"
#include "core/alloys/estimate.hpp"

namespace pourbook {

struct MeltingEstimate {
    Estimate solidus, liquidus;
    const Diagram* diagram = nullptr; // the main binary; null for a pure metal and for alloys nearby
    double axis_wt = no_number;       // the alloy on its axis
    std::string first_solid;
    std::optional<Scheil> freezing; // without diffusion in the solid
};

/// Errors: no_value (no rule for this system), out_of_range (not drawn).
Result<MeltingEstimate> estimate_melting(const AlloySetting& setting);

} // namespace pourbook

// How far the rules were off on known alloys, and the intervals made from it.
// Every alloy of the reference with a cited value is estimated from its composition (help page "mix" has the table).
// The 90 % half-width of a class is the 90th percentile of |cited - estimate| / estimate (in kelvin for melting); the
// standard uncertainty is that over 1.645. error_table.cpp holds those percentiles, rounded up to two figures;
// tests/published/alloys recomputes them and checks how often the intervals hold.
#pragma once

#include "core/alloys/estimate.hpp"

namespace pourbook {

enum class ErrorClass {
    resistivity_dilute,    // published increments, less than a doubling
    resistivity_table,     // a published table of the solid solution carries most of it
    resistivity_nordheim,  // published increments in concentrated solid solutions
    resistivity_two_phase, // a second metal takes more than 5 % of the volume
    density_dissolved,     // with published volume effects
    density_elements,
    expansion,
    liquidus_binary,
    liquidus_sum, // several solutes, effects added
    solidus_binary,
    solidus_sum,
    liquidus_near, // known alloys nearby
    solidus_near
};

/// Sets uncertainty, interval and the sentence about the error. Resistivity, density and expansion are relative,
/// melting in kelvin.
void set_error(Estimate& estimate, ErrorClass error);

/// 90 % half-width: relative, or in kelvin for the melting classes.
double half_width_90(ErrorClass error);

} // namespace pourbook

// Resistivity of an alloy at 20 degC from its composition and treatment.
//   1. What each treatment leaves dissolved: dissolved.hpp.
//   2. Solid solution: rho = rho_host + sum delta_i. delta_i from a published table of the binary system at the same
//      atomic content where there is one; else k_i 100 x_i (1 - x_i) with the published increment k_i per atomic per
//      cent (Matthiessen's rule; Linde, Ann. Phys. 15, 1932, 219; the factor 1 - x after Nordheim, Ann. Phys. 9, 1931,
//      607).
//   3. Out of solution: the published increment per per cent out of solution (aluminium), else a second metal by
//      Maxwell's formula (two_phase.hpp), else a compound taken as resistive as the matrix.
// Range: solid solutions without a table up to 45 at% in all; solutes without a coefficient up to 3 wt% are left out
// and named. Not where more
// than half of the mass is a compound, for ordered alloys, semimetals and hosts without coefficients (iron, nickel but
// for copper, titanium).
#pragma once

#include "core/alloys/dissolved.hpp"

namespace pourbook {

/// A second metal above this share of the volume makes the alloy two-phase for the rules.
constexpr double second_phase_matters = 0.05;

struct ResistivityEstimate {
    Estimate estimate;
    double matrix_si = no_number;                          // of the host's solid solution alone
    double host_si = no_number;                            // of the pure host
    double parallel_si = no_number, series_si = no_number; // bounds, where there is a second metal
    double second_share = 0;                               // of the volume
    SolidState state;
};

/// Errors: no_value (no rule for this system), out_of_range.
Result<ResistivityEstimate> estimate_resistivity(const AlloySetting& setting);

/// What a small content of one element, dissolved, adds to its host: ohm m per weight per cent.
/// Errors: no_value.
Result<Estimate> increment_per_wt(const Catalogue& catalogue, const std::string& host, const std::string& solute);

} // namespace pourbook

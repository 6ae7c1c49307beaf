// Density of the melt, heat of fusion and contraction on freezing where nothing is cited.
//
// Density of the melt: a pure metal beyond its cited figures along their slope, also below its own melting point; an
// alloy by additive volumes, 1/d = sum w_i/d_i of its elements' melts at the temperature, times how much denser the
// solid alloy is at 20 degC than the same sum of its solid elements (brass 2.5, aluminium bronze 4 %). Elements of at
// most 5 % together may be without data. Heat of fusion: entropies of fusion (J. W. Richards 1897: they are alike for
// metals of one structure). What is dissolved in the host melts with the host's entropy for each atom, at the middle of
// the alloy's melting range; what is out of solution as a metal or semiconductor of its own (silicon in aluminium, lead
// in brass) takes its own heat of fusion, a compound the entropies of its elements:
//   L = [T_m sum n_host-like dS_host + sum n_out L_out] / M.
// Contraction on freezing: 1 - d_melt(liquidus)/d_solid(solidus), fraction of the melt's volume, both densities cited
// or by their laws. Valid at one atmosphere. Own errors: constants in the file, measured by tests/laws/left_out.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors of all: no_value.
Result<Evaluated> melt_density_by_law(const Question& question);
Result<Evaluated> latent_heat_by_law(const Question& question);
Result<Evaluated> solidification_contraction_by_law(const Question& question);

/// From the stored binary diagrams (core/alloys/melting). The question's property is solidus or liquidus.
Result<Evaluated> melting_range_by_law(const Question& question);

} // namespace pourbook

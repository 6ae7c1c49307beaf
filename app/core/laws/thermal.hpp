// Thermal conductivity from the electrical one, at any temperature.
//   k = L T / rho + g      (G. Wiedemann, R. Franz, Ann. Phys. 89, 1853, 497; C. S. Smith, E. W. Palmer, Trans. AIME
//   117,
//                           1935, 225, from memory, for the lattice's part g)
// rho: resistivity at the temperature, cited or by its own law. L = 2.39e-8 and g = 7.5 W/(m K) for copper and its
// alloys (Smith and Palmer), 2.10e-8 and 12.6 for aluminium (Bungardt and Kallenbach 1950, from memory), else
// Sommerfeld's 2.443e-8 and 5; g stands still above a sixth of the host's Debye temperature (steels, Ti-6Al-4V: 77 to
// 300 K) and falls as T^1.5 below. In a pure metal below its Debye temperature electrons lose heat by small angles that
// cost no current, and L falls (A. H. Wilson 1937; J. M. Ziman, Electrons and Phonons, 1960, ch. 9):
//   L/L0 = 1 / (1 + 0.3 f [(3/pi^2) 0.63 (theta/T)^2 - J7/(2 pi^2 J5)]),   f the share of rho that is not residual
// (0.3: the theory overstates it; what aluminium and copper show between 77 and 300 K).
// Where a figure is cited the law goes through the nearest of them: both parts are scaled alike. The melt: L0 T/rho.
// Valid for metals; not for silicon, bismuth, antimony. Own errors: constants in the file, measured by
// tests/laws/left_out.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// Errors: no_value.
Result<Evaluated> thermal_conductivity_by_law(const Question& question);

} // namespace pourbook

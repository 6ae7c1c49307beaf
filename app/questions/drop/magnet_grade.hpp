// Magnet grades and materials in the reference: remanence, density, temperature coefficient, recoil permeability, as
// ranges over all cited tables.
#pragma once

#include "questions/drop/magnet_words.hpp"

namespace pourbook {

/// Remanence at the magnet's temperature, density and recoil permeability of a grade; letters behind the number (N42SH)
/// are the coercivity class and don't change the remanence. Errors: unknown grade, temperature outside the cited range.
Result<DropSetup> with_grade(DropSetup setup, const Catalogue& catalogue, const std::string& grade);

/// A remanence stated by the user at 20 degC: density of sintered NdFeB from 0.6 T up (below 1.08 T, the least that
/// ASTM A1101 knows for it, widened to samarium-cobalt's), none below. Errors: temperature outside the cited range.
Result<DropSetup> with_own_remanence(DropSetup setup, const Catalogue& catalogue);

/// Names of the grades in the table.
std::vector<std::string> magnet_grades(const Catalogue& catalogue);

} // namespace pourbook

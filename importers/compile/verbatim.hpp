// What the source prints, beside the figure that a record holds in its own unit: "1190 degF", "10710 J/mol",
// "7/32 in/ft", "about 1400 to 1450 degC", "13.8, 15.0 Btu/(h.ft.degF)".
#pragma once

#include "core/materials/record.hpp"
#include "core/quantity/unit.hpp"

#include <string>

namespace pourbook {

/// Compares each figure of the record with the printed ones converted to SI; molar_mass_kg_mol turns "per mole" into
/// "per kilogram" (0: the text has no mole in it). A figure takes over the rounding of the printed one that it comes
/// from. Returns what is wrong, empty if nothing.
std::string check_verbatim(Record& record, const Unit& unit, const std::string& printed, double molar_mass_kg_mol);

} // namespace pourbook

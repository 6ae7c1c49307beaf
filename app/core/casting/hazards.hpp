// What must not be melted at home, what asks for an acknowledgement, and the cautions that come first.
// Contents are nominal shares by mass. Thresholds, reasons and sources: db/casting and db/cautions.json.
#pragma once

#include "core/casting/practice.hpp"

namespace pourbook::casting {

struct Warning {
    std::string text;
    Citation citation;
};

/// Errors: refused, with the reason, the source and what to do (beryllium, cadmium, mercury, alkali metals; metals that
/// db/cautions.json bars from home casting; lead and magnesium without acknowledgement).
Result<bool> may_be_melted(const Catalogue& catalogue, const Metal& metal, bool acknowledged);

/// Molten metal and moisture first, then the hazards of the metal, then those of the process.
std::vector<Warning> cautions(const Catalogue& catalogue, const Metal& metal, const std::string& process);

} // namespace pourbook::casting

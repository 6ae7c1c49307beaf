// Figures in the unit a person reads: the dictionary's shown unit, or the workshop's (degF, lb/in3, %IACS).
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>

namespace pourbook {

enum class UnitSystem { shown, workshop, base }; // base: SI as it is kept, for programs

/// The unit's name as people write it ("µΩ·cm", "°C", "W/(m·K)").
std::string shown_unit(const Property& property, UnitSystem system);

/// An SI value in that unit. A resistivity in %IACS is a conductivity, so larger is smaller.
double shown_number(const Property& property, double si, UnitSystem system);

/// A standard uncertainty in that unit, at that value.
double shown_uncertainty(const Property& property, double si, double uncertainty_si, UnitSystem system);

/// "1.678" (rounded to what its 90 % interval supports); the text of a text property.
std::string shown_value(const Property& property, const Evaluated& value, UnitSystem system);

/// Like shown_value with unit and each side of the 90 % interval, as it is said everywhere: "1.678 ± 0.028 µΩ·cm".
std::string shown_full(const Property& property, const Evaluated& value, UnitSystem system);

/// The same with the level named: "1.678 ± 0.028 µΩ·cm (90 %)".
std::string shown_with_level(const Property& property, const Evaluated& value, UnitSystem system);

/// "read", "remembered", "common practice", "computed".
std::string how_known_text(HowKnown how);

} // namespace pourbook

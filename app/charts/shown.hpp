// Numbers and units as people read them, on charts and in the window: the dictionary's unit for the chosen side, rounded to
// what the uncertainty supports.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>

namespace pourbook {

enum class Units { si, workshop };

struct Shown {
    std::string value;      // "1.678"
    std::string plus_minus; // "0.017"; empty where no uncertainty applies
    std::string unit;       // "µΩ·cm"; empty without one
    std::string text() const;      // "1.678 µΩ·cm"
    std::string full_text() const; // "1.678 ± 0.017 µΩ·cm"
};

/// "uohm.cm" -> "µΩ·cm", "W/(m.K)" -> "W/(m·K)", "kg^-1 m^2" -> "kg⁻¹ m²".
std::string pretty_unit(const std::string& unit);

/// The property's unit as shown, and the property's name in that unit (a resistivity in %IACS is a conductivity).
std::string unit_of(const Property& property, Units units);
std::string label_of(const Property& property, Units units);

/// A value in the property's shown unit.
double in_shown_unit(const Property& property, double si, Units units);

Shown shown(const Property& property, double si, double standard_uncertainty_si, Units units);
Shown shown(const Property& property, const Evaluated& value, Units units);

/// "300 K (26.9 °C)".
std::string temperature_text(double kelvin);

} // namespace pourbook

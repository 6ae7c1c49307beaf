// Words around numbers on charts and in the window, beside what usecases/shown.hpp says.
#pragma once

#include "usecases/shown.hpp"

#include <string>

namespace pourbook {

/// Any unit text of the data: "uohm.cm" -> "µΩ·cm", "kg^-1 m^2" -> "kg⁻¹ m²"; empty for "1".
std::string pretty_unit(const std::string& unit);

/// A number with an exponent as in print: "8.7e-06" -> "8.7·10⁻⁶"; any other text as it is.
std::string pretty_number(const std::string& number);

/// The property's name in the chosen unit: a resistivity in %IACS is a conductivity.
std::string shown_label(const Property& property, UnitSystem system);

/// Label and unit, as an axis carries them: "density, g/cm³".
std::string label_with_unit(const Property& property, UnitSystem system);

/// "300 K (27 °C)".
std::string temperature_text(double kelvin);

} // namespace pourbook

// The one place that says an amount with its unit: a length, mass, force, time ... of the bench (SI) or the workshop
// (degF, inches with the nearest sixty-fourth, ounces and pounds, lbf). Arguments are SI.
#pragma once

#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

struct NamedUnit {
    std::string name;
    double si = 1; // of one
};
NamedUnit length_unit(UnitSystem units);                     // of a wall: mm, in
NamedUnit mass_unit(UnitSystem units);                       // of a tube: g, oz
NamedUnit mass_unit_for(double kilograms, UnitSystem units); // g or kg, oz or lb, by how much it is
/// The same of metal: silver and gold in troy ounces in the workshop.
NamedUnit metal_mass_unit_for(double kilograms, bool precious, UnitSystem units);
NamedUnit price_mass_unit(UnitSystem units); // of what a price is for: kg, lb
NamedUnit area_unit(UnitSystem units);       // mm2, in2
NamedUnit volume_unit(UnitSystem units);     // cm3, in3
NamedUnit force_unit(UnitSystem units);      // N, lbf

/// "12 mm"; "1/2 in" where it is that to half a thousandth, else "0.787 in (25/32)". figures: 0: those of a drawing.
std::string length_text(double metres, UnitSystem units, int figures = 0);
/// "25/32", "1 9/64": the nearest sixty-fourth of an inch; empty below a quarter of an inch, where it says too little.
std::string sixty_fourths(double metres);
std::string area_text(double m2, UnitSystem units, int figures = 3);
std::string volume_text(double m3, UnitSystem units, int figures = 4);
std::string mass_text(double kilograms, UnitSystem units, int figures = 3);
/// "0.7 to 1.4 g": two digits each, for what is weighed by the way.
std::string mass_range_text(double low_kg, double high_kg, UnitSystem units);
std::string density_text(double kg_m3, UnitSystem units, int figures); // g/cm³, lb/in³
std::string speed_text(double metres_per_second, UnitSystem units);
std::string force_text(double newtons, UnitSystem units, int figures = 3); // "0.123 N", "0.0277 lbf"
std::string damping_text(double N_s_m, UnitSystem units);                  // "4.287 N·s/m"
std::string temperature_text(double kelvin, UnitSystem units);             // "20 °C", "77 K", "68 °F"
/// Between two temperatures: "12 mK", "0.022 °F".
std::string difference_text(double kelvin, UnitSystem units);
std::string seconds_text(double s); // "8.40 ms", "57.0 s"

/// "90 %: 2 s to 3 s".
std::string interval_text(const std::string& low, const std::string& high);

} // namespace pourbook

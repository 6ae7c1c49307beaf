// Pressure of zinc over molten brass: how hot it may be poured before the zinc boils out.
//   p = x gamma p0,  log10(p0 / mmHg) = -6620/T - 1.255 log10 T + 12.34 (Kubaschewski and Alcock, from memory; it gives
//   one atmosphere at 1180 K, zinc's boiling point), ln gamma = -22 kJ/mol (1 - x)^2 / (R T) (regular solution, from
//   memory; the 60/40 and 70/30 brasses then boil where the trade says they do, at about 1080 and 1160 degC).
// x: mole fraction of zinc, the rest counted as copper. Range: copper with up to 45 wt% zinc, 1100 to 1600 K; the
// pressure is good to a factor of 1.4.
#pragma once

namespace pourbook::casting {

constexpr double atmosphere_Pa = 101325; // exact by convention

/// Mole fraction of zinc in an alloy with this mass share of zinc, the rest as heavy as copper.
double zinc_mole_fraction(double zinc_mass_fraction);
double zinc_pressure_Pa(double mole_fraction, double kelvin);
/// The temperature at which that pressure is reached, K.
double zinc_pressure_reached_K(double mole_fraction, double pascal);

} // namespace pourbook::casting

// Debye's and Bloch's integrals, and the constants of the elements that go into them.
// Heat of a lattice: C/3R = 3 (T/theta)^3 int_0^{theta/T} x^4 e^x/(e^x - 1)^2 dx (P. Debye, Ann. Phys. 39, 1912, 789).
// Resistivity by phonons: proportional to (T/theta)^5 J5, J_n = int_0^{theta/T} x^n / ((e^x - 1)(1 - e^-x)) dx
// (F. Bloch, Z. Phys. 59, 1930, 208; E. Grueneisen, Ann. Phys. 16, 1933, 530). Valid from 0 K to the melting point; for
// metals whose phonons have one Debye temperature it is a rough shape, better near room temperature than at 4 K.
// Debye temperatures: Kittel, Introduction to Solid State Physics, 7th ed., table of Debye temperatures (read through a
// public script that lists it); electronic heats: the same book, table of heat capacity constants (from memory).
#pragma once

#include <string>

namespace pourbook {

/// Debye temperature of an element, K; NaN: not in the table.
double debye_temperature_K(const std::string& symbol);

/// Electronic heat constant gamma, J/(mol K2); 0: not in the table.
double electronic_heat(const std::string& symbol);

/// Share of 3R, 0 to 1, at T/theta > 0.
double debye_share(double t_over_theta);

/// J_n as above, upper limit theta/T.
double bloch_integral(int n, double theta_over_t);

/// The ideal resistivity at T over that at T0.
double bloch_ratio(double theta_K, double temperature_K, double reference_K);

} // namespace pourbook

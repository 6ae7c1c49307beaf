#include "questions/say/amounts.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

constexpr double pound_kg = 0.45359237, ounce_kg = pound_kg / 16, pound_force_N = pound_kg * 9.80665;
constexpr double troy_ounce_kg = 31.1034768e-3;
constexpr double cubic_inch_m3 = inch_m * inch_m * inch_m;
constexpr int to_the_inch = 64;

/// "1 9/64" of so many sixty-fourths.
std::string fraction(long parts) {
    const long whole = parts / to_the_inch, rest = parts % to_the_inch, common = std::gcd(rest, long{to_the_inch});
    if (rest == 0) return std::to_string(whole);
    return (whole ? std::to_string(whole) + " " : "") + std::to_string(rest / common) + "/" +
           std::to_string(to_the_inch / common);
}

std::string in_unit(double si, const NamedUnit& unit, int figures) {
    return significant(si / unit.si, figures) + " " + unit.name;
}

std::string inches_text(double metres, int figures) {
    constexpr double exactly = 0.0005; // inches
    const double inches = metres / inch_m;
    const long parts = std::lround(inches * to_the_inch);
    if (parts > 0 && std::abs(inches - static_cast<double>(parts) / to_the_inch) < exactly)
        return fraction(parts) + " in";
    const std::string nearest = sixty_fourths(metres);
    return trimmed(inches, figures) + " in" + (nearest.empty() ? "" : " (" + nearest + ")");
}

} // namespace

NamedUnit length_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"in", inch_m} : NamedUnit{"mm", 1e-3};
}

NamedUnit mass_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"oz", ounce_kg} : NamedUnit{"g", 1e-3};
}

NamedUnit mass_unit_for(double kg, UnitSystem units) {
    if (units == UnitSystem::workshop) return kg < pound_kg ? NamedUnit{"oz", ounce_kg} : NamedUnit{"lb", pound_kg};
    return kg < 1 ? NamedUnit{"g", 1e-3} : NamedUnit{"kg", 1};
}

NamedUnit metal_mass_unit_for(double kg, bool precious, UnitSystem units) {
    return precious && units == UnitSystem::workshop ? NamedUnit{"ozt", troy_ounce_kg} : mass_unit_for(kg, units);
}

NamedUnit price_mass_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"lb", pound_kg} : NamedUnit{"kg", 1};
}

NamedUnit area_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"in2", inch_m * inch_m} : NamedUnit{"mm2", 1e-6};
}

NamedUnit volume_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"in3", cubic_inch_m3} : NamedUnit{"cm3", 1e-6};
}

NamedUnit force_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"lbf", pound_force_N} : NamedUnit{"N", 1};
}

std::string length_text(double m, UnitSystem units, int figures) {
    if (units == UnitSystem::workshop) return inches_text(m, figures ? figures : 4);
    return (figures ? significant(m * 1000, figures) : trimmed(m * 1000, 5)) + " mm";
}

std::string sixty_fourths(double metres) {
    constexpr double too_short_in = 0.25;
    const double inches = metres / inch_m;
    return inches < too_short_in ? "" : fraction(std::lround(inches * to_the_inch));
}

std::string area_text(double m2, UnitSystem units, int figures) {
    return in_unit(m2, area_unit(units), figures);
}

std::string volume_text(double m3, UnitSystem units, int figures) {
    return in_unit(m3, volume_unit(units), figures);
}

std::string mass_text(double kg, UnitSystem units, int figures) {
    return in_unit(kg, mass_unit_for(kg, units), figures);
}

std::string mass_range_text(double low_kg, double high_kg, UnitSystem units) {
    const NamedUnit unit = mass_unit_for(high_kg, units);
    return significant(low_kg / unit.si, 2) + " to " + significant(high_kg / unit.si, 2) + " " + unit.name;
}

std::string density_text(double kg_m3, UnitSystem units, int figures) {
    return units == UnitSystem::workshop ? significant(kg_m3 / (pound_kg / cubic_inch_m3), figures) + " lb/in³"
                                         : significant(kg_m3 / 1000, figures) + " g/cm³";
}

std::string speed_text(double v, UnitSystem units) {
    if (units == UnitSystem::workshop) return significant(v / inch_m, 3) + " in/s";
    return v < 1 ? significant(v * 1000, 3) + " mm/s" : significant(v, 3) + " m/s";
}

std::string force_text(double newtons, UnitSystem units, int figures) {
    return in_unit(newtons, force_unit(units), figures);
}

std::string damping_text(double N_s_m, UnitSystem units) {
    return units == UnitSystem::workshop ? significant(N_s_m / (pound_force_N / inch_m), 4) + " lbf·s/in"
                                         : significant(N_s_m, 4) + " N·s/m";
}

std::string temperature_text(double kelvin, UnitSystem units) {
    return units == UnitSystem::workshop ? trimmed(kelvin * 1.8 - 459.67, 5) + " °F" : celsius_text(kelvin);
}

std::string difference_text(double kelvin, UnitSystem units) {
    if (units == UnitSystem::workshop) return significant(kelvin * 1.8, 2) + " °F";
    return std::abs(kelvin) < 1 ? significant(kelvin * 1000, 2) + " mK" : significant(kelvin, 2) + " K";
}

std::string seconds_text(double s) {
    return s < 0.1 ? significant(s * 1000, 3) + " ms" : significant(s, 3) + " s";
}

std::string interval_text(const std::string& low, const std::string& high) {
    return "90 %: " + low + " to " + high;
}

} // namespace pourbook

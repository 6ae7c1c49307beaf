#include "questions/drop/eddy_words.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

constexpr double ounce_kg = 0.45359237 / 16;

} // namespace

NamedUnit length_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"in", inch_m} : NamedUnit{"mm", 1e-3};
}

NamedUnit mass_unit(UnitSystem units) {
    return units == UnitSystem::workshop ? NamedUnit{"oz", ounce_kg} : NamedUnit{"g", 1e-3};
}

std::string length_text(double m, UnitSystem units) {
    return units == UnitSystem::workshop ? trimmed(m / inch_m, 4) + " in" : trimmed(m * 1000, 5) + " mm";
}

std::string speed_text(double v, UnitSystem units) {
    if (units == UnitSystem::workshop) return significant(v / inch_m, 3) + " in/s";
    return v < 1 ? significant(v * 1000, 3) + " mm/s" : significant(v, 3) + " m/s";
}

std::string newtons(double force_N) {
    return significant(force_N, 3) + " N";
}

std::string mass_text(double kg, UnitSystem units) {
    if (units == UnitSystem::workshop) return significant(kg / ounce_kg, 3) + " oz";
    return kg < 1 ? significant(kg * 1000, 3) + " g" : significant(kg, 3) + " kg";
}

std::string temperature_words(double kelvin, UnitSystem units) {
    return units == UnitSystem::workshop ? trimmed(kelvin * 1.8 - 459.67, 5) + " °F" : trimmed(kelvin, 6) + " K";
}

std::string magnet_text(const DropSetup& setup, UnitSystem units) {
    const eddy::DropInputs& i = setup.inputs;
    const std::string outer = length_text(2 * i.outer_radius_m.value, units);
    std::string out = "sphere " + outer;
    if (i.shape == eddy::Shape::cylinder) out = "cylinder " + outer + " x " + length_text(i.length_m.value, units);
    if (i.shape == eddy::Shape::cube) out = "cube " + length_text(i.length_m.value, units);
    if (i.shape == eddy::Shape::ring)
        out = "ring " + outer + " x " + length_text(2 * i.inner_radius_m.value, units) + " x " +
              length_text(i.length_m.value, units);
    if (i.stack.pieces > 1)
        out = std::to_string(i.stack.pieces) + " x " + out + (i.stack.alternating ? " opposed" : " parallel") +
              (i.stack.gap_m > 0 ? " gap " + length_text(i.stack.gap_m, units) : "");
    if (!setup.grade.empty()) out += ", " + setup.grade;
    return out + ", " + rounded_to(i.remanence_T.value, i.remanence_T.standard(), 4) + " T at " +
           temperature_words(setup.magnet_temperature_K, units);
}

std::string tube_text(const eddy::DropInputs& i, UnitSystem units) {
    return "bore " + length_text(2 * i.bore_radius_m.value, units) + ", outside " +
           length_text(2 * i.outside_radius_m.value, units) + ", length " + length_text(i.tube_length_m.value, units);
}

std::string metal_text(const TubeMetal& tube, const Conditions& conditions, UnitSystem units) {
    const std::string rho = significant(tube.resistivity_si * 1e8, 4) + " µΩ·cm (" +
                            significant(tube.conductivity_S_m() / iacs_S_m * 100, 3) + " %IACS)";
    if (!tube.metal) return "resistivity " + rho;
    return tube.metal->name + ", " + tube.value.condition + ", " + rho + " at " +
           temperature_words(conditions.temperature_K, units);
}

} // namespace pourbook

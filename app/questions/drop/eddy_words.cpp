#include "questions/drop/eddy_words.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {

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
           temperature_text(setup.magnet_temperature_K, units);
}

namespace {

/// Across the upper end, and to the lower where it differs.
std::string across_text(double upper_radius_m, double lower_radius_m, UnitSystem units) {
    const std::string upper = length_text(2 * upper_radius_m, units);
    return upper_radius_m == lower_radius_m ? upper : upper + " to " + length_text(2 * lower_radius_m, units);
}

std::string outline_text(const eddy::WallOutline& o, UnitSystem units) {
    return "bore " + across_text(o.upper.inner_radius_m, o.lower.inner_radius_m, units) + ", outside " +
           across_text(o.upper.outer_radius_m, o.lower.outer_radius_m, units) + ", length " +
           length_text(o.to_m - o.from_m, units);
}

} // namespace

std::string tube_text(const eddy::DropInputs& i, UnitSystem units) {
    return outline_text(i.outlines().front(), units);
}

std::string metal_text(const TubeMetal& tube, const Conditions& conditions, UnitSystem units) {
    const std::string rho = significant(tube.resistivity_si * 1e8, 4) + " µΩ·cm (" +
                            significant(tube.conductivity_S_m() / iacs_S_m * 100, 3) + " %IACS)";
    if (!tube.metal) return "resistivity " + rho;
    return tube.metal->name + ", " + tube.value.condition + ", " + rho + " at " +
           temperature_text(conditions.temperature_K, units);
}

std::string piece_text(const WallPiece& p, const Conditions& conditions, UnitSystem units) {
    return outline_text(p.outline, units) + "; " + metal_text(p.metal, conditions, units);
}

} // namespace pourbook

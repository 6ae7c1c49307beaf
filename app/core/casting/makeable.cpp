#include "core/casting/makeable.hpp"

#include "core/casting/feeder.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::casting {
namespace {

constexpr double wet_over_dry = 1.3, safety = 3;
constexpr double shells_in_a_bore = 2.5, diameters_deep = 4;
constexpr double core_kg_m3 = 1600, slender_core = 6; // common practice
constexpr double flat_m = 0.008, flat_times = 8;      // common practice

std::string millimetres(double metres) {
    return significant(metres * 1000, 2) + " mm";
}

} // namespace

std::vector<std::string> cannot_be_shelled(const std::string& words, const Solid& cast, double shell_wall_m) {
    if (!(cast.bore_m > 0) || std::isnan(shell_wall_m)) return {};
    const double length = cast.box_m[2], left = cast.bore_m - 2 * shell_wall_m;
    const bool narrow = cast.bore_m < shells_in_a_bore * shell_wall_m;
    const bool deep = length > diameters_deep * cast.bore_m;
    if (!narrow && !deep) return {};
    std::string why = "Bore of " + words + " (" + millimetres(cast.bore_m) + "): ";
    if (narrow)
        why += left > 0 ? "two shell walls of " + millimetres(shell_wall_m) + " leave " + millimetres(left) +
                              ", stucco bridges there and never dries"
                        : "two shell walls of " + millimetres(shell_wall_m) + " do not fit in it";
    if (narrow && deep) why += "; ";
    if (deep)
        why += "it is " + significant(length / cast.bore_m, 2) +
               " bores deep, more than about four can't be dried, burnt out or looked through";
    why += ". Fill it with a core mix (pattern by the column 'if held' for the bore), cast round a core, or pour a bar "
           "and bore it.";
    return {why};
}

std::vector<std::string> core_cautions(const std::string& words, const Solid& cast, const std::string& process,
                                       double melt_kg_m3) {
    if (!(cast.bore_m > 0)) return {};
    const double length = cast.box_m[2], slender = length / cast.bore_m;
    const std::string bore = "Bore of " + words + " (" + millimetres(cast.bore_m) + "): ";
    if (process == "permanent")
        return {bore + "the casting shrinks onto a metal core: taper it, and draw it while the casting is still hot" +
                (slender > slender_core ? ", or take a sand core, for it is " + significant(slender, 2) + " bores deep."
                                        : ".")};
    const double volume = std::numbers::pi / 4 * cast.bore_m * cast.bore_m * length;
    const double lift_kg = (melt_kg_m3 - core_kg_m3) * volume;
    std::string why = bore + "the melt lifts its core";
    if (lift_kg > 0) why += " with " + significant(lift_kg, 2) + " kg if it lies under the metal";
    why += ": prints at both ends, vented";
    if (slender > slender_core)
        why += "; " + significant(slender, 2) + " bores long, it bends or breaks: a rod or tube in it, or stand it up";
    return {why + "."};
}

std::string tears_round_core(const std::string& words, const Solid& cast, const std::string& process,
                             double freezing_range_K) {
    if (!(cast.bore_m > 0) || !(freezing_range_K > wide_freezing_K) || process == "plaster") return {};
    return "Bore of " + words + ": this metal freezes over " + trimmed(std::round(freezing_range_K), 3) +
           " K and tears round a core that holds it: " +
           (process == "permanent"
                ? "draw the core the moment it is solid, or take one of sand."
                : "one that gives way (little binder, or hollow), loosened once the metal is solid.");
}

std::string lies_flat(const std::string& words, const Solid& cast) {
    const double low = cast.box_m[2], across = std::min(cast.box_m[0], cast.box_m[1]);
    if (cast.bore_m > 0 || low > flat_m || across < flat_times * low) return {};
    return words + " lies flat as drawn: a wall of " + millimetres(low) +
           " fills and feeds better standing on edge, the gates along its foot.";
}

SprueLoad sprue_load(const Catalogue& catalogue, const Metal& metal, double pattern_kg, double dry_shell_kg,
                     double length_m, double sprue_m) {
    SprueLoad out;
    const Range strength = range_of(practices(catalogue, metal, "pattern_strength", ""));
    out.sources = strength.sources;
    out.mass_kg = pattern_kg + wet_over_dry * dry_shell_kg;
    const double bending_N_m = out.mass_kg * earth_gravity_m_s2 * length_m / 2;
    out.stress_Pa = 32 * bending_N_m / (std::numbers::pi * sprue_m * sprue_m * sprue_m);
    out.bears_Pa = strength.low_si / safety;
    return out;
}

} // namespace pourbook::casting

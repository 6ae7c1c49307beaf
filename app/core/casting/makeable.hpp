// Can it be made this way at all: a shell inside a bore, the least wall of the process, how far metal runs in it.
//
// A shell must build and dry on the pattern's inside as outside: a bore needs 2.5 shell thicknesses, and to be dried,
// burnt out and looked through no more than about four diameters of depth (printed by investment founders as a rule of
// their own work; here common practice). Else the bore wants a core mix, or the part is poured solid and bored.
// A core floats: the melt lifts it with its own weight less the core's (Archimedes).
#pragma once

#include "core/casting/practice.hpp"
#include "core/casting/shape.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

/// Sentences on what stands against it; empty: nothing known does. words: the part as the person gave it.
std::vector<std::string> cannot_be_shelled(const std::string& words, const Solid& cast, double shell_wall_m);

/// Of a bore that a core makes in sand or plaster: what the melt pushes it up with, and that a long one bends or
/// breaks; in a metal mould, that the casting shrinks onto the core. A sand core weighs 1600 kg/m3 (common practice, no
/// source).
std::vector<std::string> core_cautions(const std::string& words, const Solid& cast, const std::string& process,
                                       double melt_kg_m3);

/// Metals that freeze over more tear easily where they are held; common practice.
inline constexpr double wide_freezing_K = 40;

/// Of a bore in a metal that freezes over a wide range: it tears round a core that holds it; empty where it does not.
/// Investment is weak and yields.
std::string tears_round_core(const std::string& words, const Solid& cast, const std::string& process,
                             double freezing_range_K);

/// A thin wall drawn lying flat, which fills better standing on edge; empty where none does.
std::string lies_flat(const std::string& words, const Solid& cast);

/// The pattern with its wet shell, held level by a round sprue at one end: bending stress 32 W (L/2) / (pi d^3).
struct SprueLoad {
    double mass_kg = no_number;   // pattern and wet shell
    double stress_Pa = no_number; // at the joint
    double bears_Pa = no_number;  // printed plastic, with a safety of three
    std::vector<SourceValue> sources;
    bool breaks() const { return stress_Pa > bears_Pa; }
};
SprueLoad sprue_load(const Catalogue& catalogue, const Metal& metal, double pattern_kg, double dry_shell_kg,
                     double length_m, double sprue_m);

} // namespace pourbook::casting

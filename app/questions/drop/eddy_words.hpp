// Lengths, speeds, masses and whole set-ups as people read them, in the chosen units; both fronts use them.
#pragma once

#include "questions/drop/magnet_words.hpp"
#include "questions/drop/tube_metal.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

struct NamedUnit {
    std::string name;
    double si = 1; // of one
};
NamedUnit length_unit(UnitSystem units); // of a wall: mm, in
NamedUnit mass_unit(UnitSystem units);   // of a tube: g, oz

std::string length_text(double metres, UnitSystem units); // "12 mm", "0.472 in"
std::string speed_text(double metres_per_second, UnitSystem units);
std::string mass_text(double kilograms, UnitSystem units);
std::string newtons(double force_N); // "0.123 N"
std::string temperature_words(double kelvin, UnitSystem units);
/// "cylinder 12 x 10 mm, N42, 1.30 T".
std::string magnet_text(const DropSetup& setup, UnitSystem units);
/// "bore 13 mm, outside 15 mm, length 1000 mm".
std::string tube_text(const eddy::DropInputs& inputs, UnitSystem units);
/// "copper, annealed, 1.68 uohm.cm (102.6 %IACS) at 293.15 K".
std::string metal_text(const TubeMetal& tube, const Conditions& conditions, UnitSystem units);

} // namespace pourbook

// Freezing time of a section of a metal in its mould (freezing.hpp) from cited figures, with the spread that their
// uncertainties give, and the time a mould keeps its heat on the way from the kiln.
//
// Spread: each input is moved by its standard uncertainty on its own and the changes of ln(time) are added in squares.
// Where a source prints no uncertainty of the mould, ours: conductivity 30 %, heat capacity 15 %, a stated wall 10 %,
// mould temperature 30 K, a contact transfer a factor of 1.5. Chvorinov's rule stands beside it as a check in thick
// moulds: there the same heat per area must flow, so the two must agree within their spread.
// In sand the cited measured correction (water, binder, convection in the grains) enters as a higher conductivity.
#pragma once

#include "core/casting/freezing.hpp"
#include "core/casting/melt_data.hpp"
#include "core/casting/practice.hpp"
#include "core/casting/shape.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

/// Slab, cylinder, ball or between, by half thickness over modulus, ends more than three half thicknesses away left
/// out; a tube's bore as a core.
FrozenSection frozen_section(const Solid& solid, const std::string& process, double shell_wall_m);

struct FreezingInputs {
    std::string process;
    Solid part;
    double pour_K = 0;
    double mould_K = no_number;      // NaN: not known
    double shell_wall_m = no_number; // NaN: the middle of the printed thicknesses
};

struct FreezingPlan {
    Traced time_s;                                   // of the heaviest section
    double low_s = no_number, high_s = no_number;    // nine in ten
    double superheat_gone_s = no_number;             // until no place is wholly liquid
    double of_slab_s = no_number;                    // a slab of the same modulus with the same mould on both sides
    double chvorinov_s = no_number;                  // thick moulds only
    double chvorinov_s_m2 = no_number;               // its constant
    double wall_m = no_number;                       // of the mould
    double black_K = no_number, black_s = no_number; // cooled to where it may be knocked out warm, and when
    std::string decides;                             // the input that widens the spread most
    std::string mould_kind;
    FreezingCase reckoned;
    std::vector<SourceValue> sources;
};

/// Errors: no_value (a figure of metal or mould is missing), refused (the mould too hot to freeze the metal).
Result<FreezingPlan> freezing_plan(const Material& material, const FreezingInputs& inputs);

/// The same mould and metal with another section or pouring temperature: seconds. Errors as freezing_course.
Result<double> freezing_s(FreezingCase reckoned, const FrozenSection& section);

struct Carry {
    std::vector<double> seconds, mould_K; // mean of the wall
    std::vector<SourceValue> sources;
};

/// An empty mould of this process on the way from the kiln. Errors: no_value.
Result<Carry> carry_from_kiln(const Material& material, const std::string& process, double wall_m, double kiln_K);

} // namespace pourbook::casting

// What the tube is made of: a metal of the reference at a temperature and in a condition, or a stated resistivity.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/uncertainty/draws.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct TubeMetal {
    const Metal* metal = nullptr; // null where a resistivity was stated
    double resistivity_si = no_number;
    Evaluated value; // of a metal: with sources and trail
    std::vector<Cause> causes;
    std::vector<std::string> notes; // weakly magnetic, another condition, assumed uncertainty

    double conductivity_S_m() const { return 1 / resistivity_si; }
    /// Standard uncertainty of ln(conductivity), from all causes.
    double log_uncertainty() const;
    std::vector<double> conductivities(Draws& draws) const;
};

/// Density of the tube's metal at its temperature, or at 20 degC where none is cited there (thermal contraction is
/// below 1.5 %). Errors: no_value.
Result<Evaluated> tube_density(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions);

/// Errors: unreadable; unknown metal; outside the cited range; refused: ferromagnetic, superconducting or molten.
Result<TubeMetal> tube_metal(const Catalogue& catalogue, const std::string& metal, const std::string& resistivity,
                             const Conditions& conditions);
Result<TubeMetal> tube_metal(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions);

} // namespace pourbook

// Free contraction of the solid from the solidus to 20 degC, on the cold length, and the trade's allowances beside it.
//
// contraction = L(solidus)/L(20 degC) - 1 = mean expansion coefficient from 20 degC to the solidus x (solidus - 20
// degC), so a pattern for a casting that contracts freely is (1 + contraction) times the casting. Only cooling below
// the solidus counts: above it the part is not yet stiff. The coefficient is the cited mean, or the integral of the
// cited instantaneous one, whichever reaches higher. Where the cited data end short of the solidus the rest is extended
// and flagged: for an alloy along the curve of its principal element, else with the last mean; the uncertainty then
// grows by 2.3e-4 per kelvin extended (copper's cited mean rises so: 16.8 to 20.3 e-6/K between 100 and 1000 degC) or
// by half the difference of the two ways, whichever is larger. No restraint, no transformation in the solid (iron,
// steel).
#pragma once

#include "core/casting/melt_data.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

struct Contraction {
    Traced strain; // fraction of the cold length
    double solidus_K = 0;
    double cited_up_to_K = 0;    // where the cited data end, at most the solidus
    double last_mean_strain = 0; // the last cited mean carried to the solidus
    bool extended = false;
};

/// Errors: no_value (no solidus, no expansion).
Result<Contraction> free_contraction(const Material& material);

/// Patternmaker's allowances: every usable figure printed for the metal, else those of its family's practice.
struct Allowance {
    double low = no_number; // fraction; NaN where nothing is printed
    double high = no_number;
    std::string from; // "printed for the metal", "practice of the family", or why there is none
    std::vector<SourceValue> sources;
    std::vector<std::string> notes; // why it differs from the free contraction
};

Allowance allowances(const Material& material, const std::string& process);

} // namespace pourbook::casting

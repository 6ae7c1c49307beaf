// A measured conductivity beside the metals one casts and owns: which of them it may be, in one sentence.
#pragma once

#include "questions/workshop/trial.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct BesideMetal {
    const Metal* metal = nullptr;
    double iacs = 0, low90 = 0, high90 = 0; // %IACS
    bool owned = false;                     // on the shelf
    bool named = false;                     // what the trial says it is
    bool agrees = false;                    // the 90 % intervals overlap
};

struct MeasuredBeside {
    double iacs = 0, low90 = 0, high90 = 0; // as measured
    std::vector<BesideMetal> metals;        // by conductivity, lowest first
    std::string sentence;
};

/// `owned` and `known` are slugs (of the shelf, and others of interest); what the inference holds likely is added.
/// Nothing where the trial measures no conductivity.
std::optional<MeasuredBeside> measured_beside(const Catalogue& catalogue, const TrialResult& trial,
                                              const std::vector<std::string>& owned,
                                              const std::vector<std::string>& known);

} // namespace pourbook

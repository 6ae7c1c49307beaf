// A number of a casting plan with its uncertainty, its sources and how it came about.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

struct Traced {
    double value_si = no_number;
    double standard_uncertainty_si = 0;
    bool estimated = false;              // by a rule of ours, where nothing is cited for the metal itself
    HowKnown how_known = HowKnown::read; // the weakest of what entered
    std::string how;                     // plain sentence
    std::vector<SourceValue> sources;    // those that entered

    double relative() const { return standard_uncertainty_si / (value_si < 0 ? -value_si : value_si); }
};

/// What evaluate() answers, without the sources that did not enter.
Traced traced(const Evaluated& value);

/// Adds the sources of one number to another, each once; the weaker way of knowing is kept.
void add_sources(Traced& to, const Traced& from);

} // namespace pourbook::casting

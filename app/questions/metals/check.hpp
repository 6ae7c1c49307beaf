// A self-check of the reference: what it holds, how much of it was read, where sources disagree, where it is thin.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

struct CoverageCell {
    const Metal* metal = nullptr;
    const Property* property = nullptr;
    std::size_t values = 0;       // published figures of this property
    std::string preferred_source; // of the resolved value at the default temperature; empty: none
    HowKnown how_known = HowKnown::read;
};

struct Conflict {
    const Metal* metal = nullptr;
    const Property* property = nullptr;
    Evaluated value; // its sources disagree beyond two standard uncertainties of the chosen one alone
    double spread_percent = 0;
};

struct CheckResult {
    std::size_t metals = 0, elements = 0, alloys = 0, records = 0, values = 0, values_read = 0, values_computed = 0,
                references = 0, prices = 0;
    std::size_t without_source = 0;
    std::size_t core_answers = 0, core_answers_read = 0; // resolved core properties of all metals
    std::vector<CoverageCell> coverage;
    std::vector<Conflict> conflicts; // largest relative spread first
    std::vector<std::string> faults; // what breaks a law of the data; empty in a sound reference
};

CheckResult check(const Catalogue& catalogue);

} // namespace pourbook

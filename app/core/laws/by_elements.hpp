// A property of an alloy as a sum over its elements' own, at a temperature.
#pragma once

#include "core/evaluate/candidate.hpp"

#include <functional>

namespace pourbook {

struct ElementSum {
    double value_si = no_number;
    double without_data_wt = 0; // per cent, left out
    double relative = 0;        // root sum of squares of the elements' uncertainties, weighted
    std::vector<SourceValue> sources;
};

using OfElement = std::function<Result<Evaluated>(const Metal&)>;

/// sum w_i x_i, or 1/sum(w_i/x_i) for densities. Errors: no_value where more than `most_without_wt` per cent have none.
Result<ElementSum> sum_over_elements(const Catalogue& catalogue, const Metal& metal, const OfElement& of_element,
                                     bool reciprocal, double most_without_wt);

} // namespace pourbook

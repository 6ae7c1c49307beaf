#include "core/laws/by_elements.hpp"

#include "core/laws/anchor.hpp"

#include <cmath>

namespace pourbook {

Result<ElementSum> sum_over_elements(const Catalogue& catalogue, const Metal& metal, const OfElement& of_element,
                                     bool reciprocal, double most_without_wt) {
    ElementSum out;
    double sum = 0, share = 0, variance = 0;
    std::string missing;
    for (const Portion& p : metal.composition) {
        if (!(p.wt_percent > 0)) continue;
        const Metal* element = catalogue.element(p.element);
        const Result<Evaluated> part = element ? of_element(*element) : Result<Evaluated>(no_law(p.element));
        if (!part) {
            out.without_data_wt += p.wt_percent;
            missing += (missing.empty() ? "" : ", ") + p.element;
            continue;
        }
        const double term = p.wt_percent * (reciprocal ? 1 / part->value_si : part->value_si);
        sum += term;
        share += p.wt_percent;
        variance += std::pow(term * part->standard_uncertainty_si / part->value_si, 2);
        if (!part->sources.empty()) out.sources.push_back(part->sources.front());
    }
    if (share <= 0 || out.without_data_wt > most_without_wt)
        return no_law("nothing is cited for " + (missing.empty() ? "its elements" : "its " + missing));
    out.value_si = reciprocal ? share / sum : sum / share;
    out.relative = std::sqrt(variance) / sum;
    return out;
}

} // namespace pourbook

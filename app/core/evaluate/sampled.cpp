#include "core/evaluate/sampled.hpp"

#include <cmath>

namespace pourbook {
namespace {

void add_term(std::vector<double>& sum, double value_si, const std::vector<Cause>& causes, Draws& draws) {
    std::vector<double> exponent(draws.samples(), 0);
    for (const Cause& cause : causes) {
        const std::vector<double>& column = draws.of(cause.key);
        const double spread = log_spread(cause.relative);
        for (std::size_t s = 0; s < exponent.size(); ++s) exponent[s] += spread * column[s];
    }
    for (std::size_t s = 0; s < sum.size(); ++s) sum[s] += value_si * std::exp(exponent[s]);
}

} // namespace

std::vector<double> sampled(const Evaluated& value, Draws& draws) {
    std::vector<double> out(draws.samples(), 0);
    if (value.terms.empty()) add_term(out, value.value_si, value.causes, draws);
    for (const Term& t : value.terms) add_term(out, t.value_si, t.causes, draws);
    if (value.terms_reciprocal)
        for (double& x : out) x = 1 / x;
    return out;
}

std::vector<Cause> weighted_causes(const Evaluated& value) {
    if (value.terms.empty()) return value.causes;
    double sum = 0;
    for (const Term& t : value.terms) sum += t.value_si;
    std::vector<Cause> out;
    for (const Term& t : value.terms)
        for (const Cause& c : t.causes)
            out.push_back({c.key, std::copysign(std::expm1(std::abs(log_spread(c.relative)) * t.value_si / sum),
                                                value.terms_reciprocal ? -c.relative : c.relative)});
    return out;
}

} // namespace pourbook

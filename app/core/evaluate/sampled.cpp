#include "core/evaluate/sampled.hpp"

#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

/// Even between the ends, by the cause's column of standard normal numbers.
double drawn_between(const Between& b, double normal) {
    return b.low + (b.high - b.low) * 0.5 * std::erfc(-normal / std::numbers::sqrt2);
}

void add_term(std::vector<double>& sum, const Term& term, Draws& draws) {
    std::vector<double> exponent(draws.samples(), 0);
    for (const Cause& cause : term.causes) {
        const std::vector<double>& column = draws.of(cause.key);
        const double spread = log_spread(cause.relative);
        for (std::size_t s = 0; s < exponent.size(); ++s) exponent[s] += spread * column[s];
    }
    std::vector<double> part(draws.samples());
    for (std::size_t s = 0; s < part.size(); ++s) part[s] = term.value_si * std::exp(exponent[s]);
    for (const Between& b : term.between) {
        const std::vector<double>& column = draws.of(b.key);
        for (std::size_t s = 0; s < part.size(); ++s) part[s] *= drawn_between(b, column[s]);
    }
    for (std::size_t s = 0; s < sum.size(); ++s) sum[s] += part[s];
}

void apply(const Pores& pores, std::vector<double>& values, Draws& draws) {
    const std::vector<double>& column = draws.of(pores.share.key);
    for (std::size_t s = 0; s < values.size(); ++s)
        values[s] *= std::pow(1 - drawn_between(pores.share, column[s]), pores.exponent);
}

/// Standard deviation of an even distribution.
double spread_of(const Between& b) {
    return (b.high - b.low) / std::sqrt(12.0);
}

/// What one unit of a quantity adds to the term, the others at their middles.
double per_unit(const Term& term, const Between& quantity) {
    double value = term.value_si;
    for (const Between& b : term.between)
        if (&b != &quantity) value *= b.middle();
    return value;
}

double sum_of(const std::vector<Term>& terms) {
    double sum = 0;
    for (const Term& t : terms) sum += t.nominal_si();
    return sum;
}

} // namespace

double Term::nominal_si() const {
    double value = value_si;
    for (const Between& b : between) value *= b.middle();
    return value;
}

std::vector<double> sampled(const Evaluated& value, Draws& draws) {
    std::vector<double> out(draws.samples(), 0);
    if (value.terms.empty()) add_term(out, {value.value_si, value.causes}, draws);
    for (const Term& t : value.terms) add_term(out, t, draws);
    if (value.terms_reciprocal)
        for (double& x : out) x = 1 / x;
    for (const Pores& p : value.pores) apply(p, out, draws);
    return out;
}

double nominal_of_terms(const Evaluated& value) {
    double sum = sum_of(value.terms);
    if (value.terms_reciprocal) sum = 1 / sum;
    for (const Pores& p : value.pores) sum *= std::pow(1 - p.share.middle(), p.exponent);
    return sum;
}

std::vector<Cause> weighted_causes(const Evaluated& value) {
    if (value.terms.empty()) return value.causes;
    const double sum = sum_of(value.terms), sign = value.terms_reciprocal ? -1 : 1;
    std::vector<Cause> out;
    for (const Term& t : value.terms) {
        const double share = t.nominal_si() / sum;
        for (const Cause& c : t.causes)
            out.push_back({c.key, std::copysign(std::expm1(std::abs(log_spread(c.relative) * share)),
                                                sign * c.relative * share)});
        for (const Between& b : t.between) out.push_back({b.key, sign * spread_of(b) * per_unit(t, b) / sum});
    }
    for (const Pores& p : value.pores)
        out.push_back({p.share.key, -p.exponent * spread_of(p.share) / (1 - p.share.middle())});
    return out;
}

Evaluated with_fixed(Evaluated value, const std::string& key, double amount) {
    for (Term& t : value.terms)
        for (Between& b : t.between)
            if (b.key == key) b.low = b.high = amount;
    for (Pores& p : value.pores)
        if (p.share.key == key) p.share.low = p.share.high = amount;
    if (!value.terms.empty()) value.value_si = nominal_of_terms(value);
    return value;
}

} // namespace pourbook

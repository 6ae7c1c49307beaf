#include "core/evaluate/sampled.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// Between the ends, `share` of the way.
double between(const Between& b, double share) {
    return b.low + (b.high - b.low) * share;
}

void vary(std::vector<double>& values, const Cause& cause, Draws& draws) {
    const std::vector<std::uint32_t>& order = draws.order_of(cause.key);
    const std::vector<double>& middles = draws.strata();
    const double spread = log_spread(cause.relative);
    const std::vector<double>& factor =
        draws.in_strata({spread, 0, 0}, [&](std::uint32_t i) { return std::exp(spread * middles[i]); });
    for (std::size_t s = 0; s < values.size(); ++s) values[s] *= factor[order[s]];
}

void vary(std::vector<double>& values, const Between& b, Draws& draws) {
    const std::vector<std::uint32_t>& order = draws.order_of(b.key);
    for (std::size_t s = 0; s < values.size(); ++s) values[s] *= between(b, draws.share_below(order[s]));
}

void vary(std::vector<double>& values, const Pores& pores, Draws& draws) {
    const Between& b = pores.share;
    const std::vector<std::uint32_t>& order = draws.order_of(b.key);
    const std::vector<double>& factor = draws.in_strata({b.low, b.high, pores.exponent}, [&](std::uint32_t i) {
        return std::pow(1 - between(b, draws.share_below(i)), pores.exponent);
    });
    for (std::size_t s = 0; s < values.size(); ++s) values[s] *= factor[order[s]];
}

std::vector<double> drawn(double value_si, const std::vector<Cause>& causes, Draws& draws) {
    std::vector<double> out(draws.samples(), value_si);
    for (const Cause& cause : causes) vary(out, cause, draws);
    return out;
}

std::vector<double> drawn(const Term& term, Draws& draws) {
    std::vector<double> out = drawn(term.value_si, term.causes, draws);
    for (const Between& b : term.between) vary(out, b, draws);
    return out;
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
    const bool whole = value.terms.empty();
    std::vector<double> out = whole ? drawn(value.value_si, value.causes, draws) : drawn(value.terms.front(), draws);
    for (std::size_t t = 1; t < value.terms.size(); ++t) {
        const std::vector<double> more = drawn(value.terms[t], draws);
        for (std::size_t s = 0; s < out.size(); ++s) out[s] += more[s];
    }
    if (value.terms_reciprocal)
        for (double& x : out) x = 1 / x;
    for (const Pores& p : value.pores) vary(out, p, draws);
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

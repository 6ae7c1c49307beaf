#include "core/laws/foundry.hpp"

#include "core/casting/practice.hpp"
#include "core/laws/anchor.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double least_over_liquidus_K = 10, free_contraction_error = 0.15, least_allowance_doubt = 0.0005;
constexpr double most_over_free = 2; // a family's practice beyond it is that of other metals of the family

double half_width(double low, double high) {
    return (high - low) / 2 / std::sqrt(3.0);
}

casting::Range practice_of(const Question& q, const char* quantity) {
    return casting::range_of(casting::practices(q.catalogue, q.metal, quantity, ""));
}

Result<Evaluated> free_contraction(const Question& q) {
    const Result<Evaluated> solidus = value_at(q.catalogue, q.metal, "solidus", room_temperature_K);
    if (!solidus) return solidus.problem();
    const Result<Evaluated> mean = value_at(q.catalogue, q.metal, "linear_expansion", solidus->value_si);
    if (!mean) return mean.problem();
    const double relative = mean->standard_uncertainty_si / mean->value_si;
    return worked_out(q, mean->basis == Basis::estimated ? Basis::estimated : Basis::carried,
                      mean->value_si * (solidus->value_si - room_temperature_K),
                      std::hypot(relative, free_contraction_error), "free contraction from the solidus to 20 degC",
                      {mean->sources.front(), solidus->sources.front()});
}

} // namespace

Result<Evaluated> pouring_temperature_by_law(const Question& q) {
    const Result<Evaluated> liquidus = value_at(q.catalogue, q.metal, "liquidus", room_temperature_K);
    if (!liquidus) return liquidus.problem();
    const double least = liquidus->value_si + least_over_liquidus_K;
    const casting::Range printed = practice_of(q, "pouring_temperature");
    if (!printed.empty() && printed.high_si > least) {
        const double low = std::max(printed.low_si, least), value = (low + printed.high_si) / 2;
        return worked_out(q, Basis::carried, value, half_width(low, printed.high_si) / value,
                          "practice of the family " + q.metal.family, printed.sources);
    }
    const casting::Range over = practice_of(q, "superheat");
    if (over.empty()) return no_law("no superheat is known in practice");
    const double value = liquidus->value_si + over.middle();
    std::vector<SourceValue> sources = over.sources;
    sources.push_back(liquidus->sources.front());
    return worked_out(q, liquidus->basis == Basis::estimated ? Basis::estimated : Basis::carried, value,
                      std::hypot(half_width(over.low_si, over.high_si), liquidus->standard_uncertainty_si) / value,
                      "liquidus plus the common superheat", std::move(sources));
}

Result<Evaluated> contraction_allowance_by_law(const Question& q) {
    const Result<Evaluated> free = free_contraction(q);
    const casting::Range printed = practice_of(q, "contraction_allowance");
    const bool fits = !printed.empty() && (!free || printed.middle() < most_over_free * free->value_si);
    if (!fits) return free;
    Evaluated e =
        worked_out(q, Basis::carried, printed.middle(), 0, "practice of the family " + q.metal.family, printed.sources);
    e.standard_uncertainty_si = std::max(half_width(printed.low_si, printed.high_si), least_allowance_doubt);
    if (e.value_si != 0) e.causes.front().relative = e.standard_uncertainty_si / std::abs(e.value_si);
    return e;
}

} // namespace pourbook

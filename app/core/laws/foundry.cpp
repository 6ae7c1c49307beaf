#include "core/laws/foundry.hpp"

#include "core/casting/practice.hpp"
#include "core/laws/anchor.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double least_over_liquidus_K = 10, least_relative = 0.05, free_contraction_error = 0.15;

double half_width(double low, double high) {
    return (high - low) / 2 / std::sqrt(3.0);
}

casting::Range practice_of(const Question& q, const char* quantity) {
    return casting::range_of(casting::practices(q.catalogue, q.metal, quantity, ""));
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
    const casting::Range printed = practice_of(q, "contraction_allowance");
    if (!printed.empty())
        return worked_out(q, Basis::carried, printed.middle(),
                          std::max(half_width(printed.low_si, printed.high_si) / printed.middle(), least_relative),
                          "practice of the family " + q.metal.family, printed.sources);
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

} // namespace pourbook

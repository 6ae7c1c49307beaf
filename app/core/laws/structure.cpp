#include "core/laws/structure.hpp"

#include "core/alloys/resistivity.hpp"
#include "core/casting/practice.hpp"
#include "core/laws/anchor.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double change_doubt = 0.6; // nine in ten published changes lie within (tests/published/casting_state)

double share_towards(const Catalogue& catalogue, const Metal& metal, const char* end) {
    const auto entries = casting::of_grade(casting::practices(catalogue, metal, "casting_structure", ""), end);
    return entries.empty() ? 0 : entries.front()->figure.high_si;
}

} // namespace

std::optional<Structure> structure_between(const Catalogue& catalogue, const Metal& metal, Treatment known,
                                           Treatment asked) {
    const Result<Composition> composition = composition_of_metal(catalogue, metal);
    if (!composition) return std::nullopt;
    const auto estimate = [&](Treatment t) -> std::optional<double> {
        const Result<ResistivityEstimate> e = estimate_resistivity({catalogue, *composition, t});
        return e ? std::optional(e->estimate.value_si) : std::nullopt;
    };
    const auto from = estimate(known), to = estimate(asked);
    if (!from || !to) return std::nullopt;
    Structure out{*to - *from, change_doubt * std::abs(*to - *from)};
    if (asked != Treatment::as_cast) return out;
    const auto aged = estimate(Treatment::aged), quenched = estimate(Treatment::quenched);
    if (aged) out.low_si = std::min(0.0, (*aged - *to) * share_towards(catalogue, metal, "aged"));
    if (quenched) out.high_si = std::max(0.0, (*quenched - *to) * share_towards(catalogue, metal, "quenched"));
    return out;
}

Treatment treatment_of(const CastingState& state) {
    return treatment_named(state.treatment).value_or(Treatment::as_cast);
}

const char* condition_of(Treatment treatment) {
    return treatment == Treatment::quenched ? "solution-treated" : name_of(treatment);
}

} // namespace pourbook

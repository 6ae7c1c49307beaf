#include "core/casting/heat.hpp"

#include "core/quantity/format.hpp"

#include <cmath>
#include <functional>

namespace pourbook::casting {
namespace {

constexpr int intervals = 16; // even, for Simpson's rule

/// Integral of a heat capacity from one temperature to another; relative uncertainty of the worst point.
Result<Traced> integral(const std::function<Result<Traced>(double)>& heat_capacity, double from_K, double to_K) {
    Traced out;
    out.value_si = 0;
    double worst = 0;
    const double step = (to_K - from_K) / intervals;
    for (int i = 0; i <= intervals; ++i) {
        const Result<Traced> c = heat_capacity(from_K + step * i);
        if (!c) return c.problem();
        const double weight = i == 0 || i == intervals ? 1 : (i % 2 == 1 ? 4 : 2);
        out.value_si += weight * step / 3 * c->value_si;
        worst = std::max(worst, c->relative());
        out.estimated = out.estimated || c->estimated;
        if (out.how.empty() || c->estimated) out.how = c->how;
        add_sources(out, *c);
    }
    out.standard_uncertainty_si = worst * std::abs(out.value_si);
    return out;
}

} // namespace

Result<MeltHeat> heat_to_pour(const Material& m, double start_K, double pour_K) {
    const auto low = solidus(m), high = liquidus(m);
    if (!low) return low.problem();
    if (!high) return high.problem();
    if (pour_K < high->value_si)
        return Problem{Problem::Kind::refused,
                       "the pour must not be below the liquidus, " + trimmed(high->value_si, 5) + " K", 0};
    const auto solid_cp = [&](double t) { return solid_specific_heat(m, t); };
    const auto melt_cp = [&](double t) { return liquid_specific_heat(m, t); };
    const Result<Traced> solid = integral(solid_cp, start_K, low->value_si);
    const Result<Traced> melt = integral(melt_cp, high->value_si, pour_K);
    const Result<Traced> fusion = latent_heat(m);
    for (const auto* part : {&solid, &melt, &fusion})
        if (!*part) return part->problem();
    const auto at_solidus = solid_cp(low->value_si), at_liquidus = melt_cp(high->value_si);
    MeltHeat h{*solid, *fusion, *melt};
    h.melt.value_si += (at_solidus->value_si + at_liquidus->value_si) / 2 * (high->value_si - low->value_si);
    h.total_J_kg = h.solid.value_si + h.fusion.value_si + h.melt.value_si;
    h.standard_uncertainty_J_kg =
        std::hypot(h.solid.standard_uncertainty_si, h.fusion.standard_uncertainty_si, h.melt.standard_uncertainty_si);
    h.estimated = h.solid.estimated || h.fusion.estimated || h.melt.estimated;
    return h;
}

} // namespace pourbook::casting

#include "core/casting/charge.hpp"

#include <string>

namespace pourbook::casting {

Result<Charge> charge_for(const ChargeInputs& in) {
    if (!(in.casting_kg > 0)) return unreadable("the casting has no mass");
    if (!(in.gating_kg >= 0) || !(in.feeder_kg >= 0) || !(in.heel_kg >= 0))
        return unreadable("gating, feeder and heel can't be negative");
    if (!(in.melt_loss >= 0 && in.melt_loss <= 0.5)) return unreadable("the melt loss must be from 0 to 50 %");
    Charge c;
    c.returns_kg = in.gating_kg + in.feeder_kg;
    c.poured_kg = in.casting_kg + c.returns_kg;
    const double melted = c.poured_kg / (1 - in.melt_loss);
    c.lost_kg = melted - c.poured_kg;
    c.charge_kg = melted + in.heel_kg;
    if (in.yield) {
        if (!(*in.yield > 0 && *in.yield <= 1)) return unreadable("the yield must be above 0 and at most 100 %");
        c.by_yield = true;
        const double by_yield = in.casting_kg / *in.yield;
        c.short_of_feed = by_yield < c.charge_kg;
        c.charge_kg = by_yield;
    }
    c.yield = in.casting_kg / c.charge_kg;
    return c;
}

} // namespace pourbook::casting

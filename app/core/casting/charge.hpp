// How much metal to melt. Masses are of solid metal at 20 degC.
//   poured = casting + gating + feeder          charge = poured / (1 - melt loss) + heel
// or, by the founder's rule, charge = casting / yield, never both. Mass balance of the first: charge = castings +
// gating and feeder (come back as scrap) + loss + heel.
#pragma once

#include "core/result.hpp"

#include <optional>

namespace pourbook::casting {

struct ChargeInputs {
    double casting_kg = 0; // with machining stock, all castings of the heat
    double gating_kg = 0;
    double feeder_kg = 0;
    double melt_loss = 0; // fraction of the charge without heel
    double heel_kg = 0;
    std::optional<double> yield; // casting / charge; replaces gating, feeder, loss and heel
};

struct Charge {
    double poured_kg = 0;
    double lost_kg = 0;
    double returns_kg = 0; // gating and feeder
    double charge_kg = 0;
    double yield = 0; // casting / charge
    bool by_yield = false;
    bool short_of_feed = false; // by_yield leaves less than gating and feeder need
};

/// Errors: unreadable, naming the input (masses not negative, loss 0 to 0.5, yield above 0 to 1).
Result<Charge> charge_for(const ChargeInputs& inputs);

} // namespace pourbook::casting

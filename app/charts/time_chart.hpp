// A fall against time: the magnet's speed, its place, the load on the hand or scale that carries the tube, the voltage
// of a pickup coil round it.
#pragma once

#include "charts/curve_chart.hpp"
#include "questions/drop/drop.hpp"

#include <optional>

namespace pourbook {

enum class TimeOf { speed, place, load, voltage };

struct PickupCoil {
    double turns = 0, diameter_m = 0, at_m = 0; // mean diameter; its place below the mouth
};

/// A line a drop, from the release to the end of the timing. The voltage is that of the magnet's own field through a
/// short coil, turns 2 pi r v B_r (Faraday); its sign depends on the winding. What the currents in the wall change of
/// it is told by its size, mu0 sigma v w / 2 (a thin wall). Errors: unreadable (a voltage without a coil, a coil inside
/// the tube).
Result<CurveChart> time_chart(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, TimeOf what,
                              const std::optional<PickupCoil>& coil, UnitSystem units);

} // namespace pourbook

// What has to be molten to cast a tube, by the plan of its pour.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/result.hpp"

#include <string>

namespace pourbook {

struct TubeCharge {
    double charge_kg = 0, melt_m3 = 0;
};

/// Errors: those of pour() without limits: a hazard, missing figures of the metal.
Result<TubeCharge> tube_charge(const Catalogue& catalogue, const Metal& metal, double bore_m, double outside_m,
                               double length_m, const std::string& process);

} // namespace pourbook

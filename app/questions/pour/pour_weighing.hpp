// How much metal a pour takes: casting, gating, feeder, loss and the person's own yield; for the planner alone.
#pragma once

#include "core/casting/melt_data.hpp"
#include "questions/pour/pour.hpp"

#include <optional>

namespace pourbook {

/// Adds charge, gating, yields, losses and the shelf's share to a plan that has its feeding. Masses in kg.
/// A problem where nothing can be weighed (a yield or loss out of range).
std::optional<Problem> weigh_pour(const casting::Material& material, const PourRequest& request, PourResult& plan);

} // namespace pourbook

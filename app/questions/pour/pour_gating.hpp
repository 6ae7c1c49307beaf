// The gating of a pour: what core/casting/gating needs, gathered from the plan so far.
#pragma once

#include "core/casting/melt_data.hpp"
#include "questions/pour/pour.hpp"

#include <string>

namespace pourbook {

bool light_metal(const PourResult& plan); // by density

/// From charge, walls and freezing time of the plan. Never fails: what is not known is NaN in it.
casting::GatingPlan gating_of(const casting::Material& material, const PourResult& plan);

/// A printed sprue that carries pattern and wet shell while they are dipped; NaN where the process has none.
casting::SprueLoad sprue_load_of(const casting::Material& material, const PourResult& plan);
/// A caution, or empty.
std::string weak_sprue(const PourResult& plan);

} // namespace pourbook

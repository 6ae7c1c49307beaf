// Slits and off-axis travel change the drag by a factor that is known where drag is proportional to speed.
#pragma once

#include "core/eddy/drop_model.hpp"

#include <optional>

namespace pourbook {

/// The drag at the speed reached must lie within 5 % of the linear law.
constexpr double linear_enough = 0.95;

/// The same for the fall of a magnet through a slit tube or off the axis.
std::optional<Problem> low_speed_fault(const eddy::FallSetup& setup, std::optional<double> speed_m_s);

/// Why such a set-up can't be answered at a speed (empty: it never settles); nothing where it can, or for a whole tube
/// with the magnet on its axis.
std::optional<Problem> low_speed_fault(const eddy::DropModel& model, double conductivity_S_m,
                                       std::optional<double> speed_m_s);

} // namespace pourbook

#include "usecases/low_speed.hpp"

namespace pourbook {

std::optional<Problem> low_speed_fault(const eddy::DropModel& model, double conductivity_S_m,
                                       std::optional<double> speed_m_s) {
    const eddy::FallSetup s = model.setup(conductivity_S_m);
    const bool whole = model.nominal().drag == 1;
    if (whole || (speed_m_s && model.curve().relative(s.u_per_speed * *speed_m_s) >= linear_enough))
        return std::nullopt;
    return Problem{Problem::Kind::refused,
                   "slits and off-axis travel are computed where drag is proportional to speed; this magnet moves too "
                   "fast for that",
                   0};
}

} // namespace pourbook

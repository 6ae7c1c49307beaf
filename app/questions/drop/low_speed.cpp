#include "questions/drop/low_speed.hpp"

namespace pourbook {

std::optional<Problem> low_speed_fault(const eddy::DropModel& model, double conductivity_S_m,
                                       std::optional<double> speed_m_s) {
    if (model.nominal().drag == 1) return std::nullopt;
    return low_speed_fault(model.setup(conductivity_S_m), speed_m_s);
}

std::optional<Problem> low_speed_fault(const eddy::FallSetup& setup, std::optional<double> speed_m_s) {
    if (speed_m_s && setup.curve->relative(setup.u_per_speed * *speed_m_s) >= linear_enough) return std::nullopt;
    return Problem{Problem::Kind::refused,
                   "slits and off-axis travel are computed where drag is proportional to speed; this magnet moves too "
                   "fast for that",
                   0};
}

} // namespace pourbook

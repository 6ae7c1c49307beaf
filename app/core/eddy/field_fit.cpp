#include "core/eddy/field_fit.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::eddy {
namespace {

double slope(const Magnet& m, double z) {
    const double step = 1e-4 * (m.outer_radius_m + z);
    const double low = std::max(0.0, z - step);
    return (axial_field_over_remanence(m, z + step) - axial_field_over_remanence(m, low)) / (z + step - low);
}

struct Sums {
    double fb = 0, ff = 0;
};

} // namespace

Result<FieldFit> fitted_remanence(const Magnet& m, const std::vector<FieldReading>& readings) {
    const auto refused = [](const char* text) { return Problem{Problem::Kind::refused, text, 0}; };
    if (readings.empty()) return refused("no field reading");
    for (const FieldReading& r : readings)
        if (!(r.field_T > 0 && r.distance_m >= 0 && r.field_doubt_T > 0))
            return refused("a field reading needs a field above zero, with an uncertainty, at a distance from zero up");
    FieldFit fit;
    fit.remanence_T = readings.front().field_T / axial_field_over_remanence(m, readings.front().distance_m);
    std::vector<double> doubts(readings.size());
    Sums sums;
    for (int turn = 0; turn < 4; ++turn) { // the weights depend a little on the solution
        sums = {};
        for (std::size_t i = 0; i < readings.size(); ++i) {
            const FieldReading& r = readings[i];
            const double f = axial_field_over_remanence(m, r.distance_m);
            doubts[i] = std::hypot(r.field_doubt_T, fit.remanence_T * slope(m, r.distance_m) * r.distance_doubt_m);
            sums.fb += f * r.field_T / (doubts[i] * doubts[i]);
            sums.ff += f * f / (doubts[i] * doubts[i]);
        }
        fit.remanence_T = sums.fb / sums.ff;
    }
    double squares = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        fit.residuals_T.push_back(readings[i].field_T -
                                  fit.remanence_T * axial_field_over_remanence(m, readings[i].distance_m));
        fit.in_doubts.push_back(fit.residuals_T.back() / doubts[i]);
        squares += fit.in_doubts.back() * fit.in_doubts.back();
    }
    if (readings.size() > 1) fit.widened = std::max(1.0, std::sqrt(squares / static_cast<double>(readings.size() - 1)));
    fit.standard_uncertainty_T = fit.widened / std::sqrt(sums.ff);
    return fit;
}

} // namespace pourbook::eddy

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

constexpr double usual_depth_m = 1e-3;

struct Sums {
    double fb = 0, ff = 0;
};

std::vector<FieldReading> deeper(std::vector<FieldReading> readings, double by) {
    for (FieldReading& r : readings) r.distance_m = std::max(0.0, r.distance_m + by);
    return readings;
}

double misfit(const FieldFit& f, double depth) {
    double sum = depth * depth / (usual_depth_m * usual_depth_m);
    for (const double x : f.in_doubts) sum += x * x;
    return sum;
}

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

Result<FieldFit> fitted_with_depth(const Magnet& m, const std::vector<FieldReading>& readings) {
    if (readings.size() < 3)
        return Problem{Problem::Kind::refused, "the sensor's depth needs three readings or more", 0};
    const Result<FieldFit> plain = fitted_remanence(m, readings);
    if (!plain) return plain;
    // The best remanence for each depth, and the depth of the least misfit by golden section.
    const auto at = [&](double depth) { return *fitted_remanence(m, deeper(readings, depth)); };
    const auto worse = [&](double depth) { return misfit(at(depth), depth); };
    double low = -3 * usual_depth_m, high = 5 * usual_depth_m;
    constexpr double golden = 0.6180339887498949;
    for (int i = 0; i < 60; ++i) {
        const double a = high - golden * (high - low), b = low + golden * (high - low);
        (worse(a) < worse(b) ? high : low) = worse(a) < worse(b) ? b : a;
    }
    const double depth = (low + high) / 2, step = 0.05 * usual_depth_m;
    FieldFit fit = at(depth);
    fit.depth_m = depth;
    const double curvature = (worse(depth + step) - 2 * worse(depth) + worse(depth - step)) / (step * step);
    fit.depth_doubt_m = std::sqrt(2 / std::max(curvature, 2 / (usual_depth_m * usual_depth_m)));
    const double by_depth = (at(depth + step).remanence_T - at(depth - step).remanence_T) / (2 * step);
    fit.standard_uncertainty_T = std::hypot(fit.standard_uncertainty_T, by_depth * fit.depth_doubt_m);
    return fit;
}

} // namespace pourbook::eddy

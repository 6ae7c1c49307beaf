#include "core/casting/heat_line.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace pourbook::casting {
namespace {

constexpr double stefan_boltzmann_W_m2_K4 = 5.670374419e-8; // exact in the SI of 2019
constexpr int most_iterations = 60;
constexpr double converged = 1e-11; // of the heat of the line, per step
constexpr double rounded = 1e-14;   // of a flow, where cells conduct without measure

} // namespace

double EnthalpyCurve::temperature_K(double h) const {
    if (h <= 0 || melting_J_m3 <= 0) return solidus_K + h / solid_J_m3_K;
    if (h < melting_J_m3) return solidus_K + (liquidus_K - solidus_K) * h / melting_J_m3;
    return liquidus_K + (h - melting_J_m3) / melt_J_m3_K;
}

double EnthalpyCurve::slope_K_m3_J(double h) const {
    if (h <= 0 || melting_J_m3 <= 0) return 1 / solid_J_m3_K;
    if (h < melting_J_m3) return (liquidus_K - solidus_K) / melting_J_m3;
    return 1 / melt_J_m3_K;
}

double EnthalpyCurve::enthalpy_J_m3(double kelvin) const {
    if (melting_J_m3 > 0 && kelvin >= liquidus_K) return melting_J_m3 + (kelvin - liquidus_K) * melt_J_m3_K;
    if (kelvin <= solidus_K || melting_J_m3 <= 0) return (kelvin - solidus_K) * solid_J_m3_K;
    return melting_J_m3 * (kelvin - solidus_K) / (liquidus_K - solidus_K);
}

double HeatCell::conductivity_W_m_K() const {
    if (curve.melting_J_m3 <= 0) return solid_W_m_K;
    const double melted = std::clamp(enthalpy_J_m3 / curve.melting_J_m3, 0.0, 1.0);
    return solid_W_m_K + melted * (melt_W_m_K - solid_W_m_K);
}

HeatLine::HeatLine(std::vector<HeatCell> cells, OuterEnd end, std::vector<int> contacts, double contact_W_m2_K)
    : cells_(std::move(cells)), end_(end), contacts_(std::move(contacts)), contact_W_m2_K_(contact_W_m2_K),
      face_W_K_(cells_.size(), 0.0), trial_(cells_.size()), diagonal_(cells_.size()), lower_(cells_.size()),
      upper_(cells_.size()), residual_(cells_.size()) {}

double HeatLine::heat_J() const {
    double sum = 0;
    for (std::size_t i = 0; i < cells_.size(); ++i) sum += cells_[i].volume * cells_[i].enthalpy_J_m3;
    return sum;
}

/// Conductance from each cell to the next, with the conductivities of the state at the start of the step.
void HeatLine::conduct() {
    for (std::size_t i = 0; i + 1 < cells_.size(); ++i) {
        const HeatCell &a = cells_[i], &b = cells_[i + 1];
        double resistance = (a.outer_m - a.inner_m) / (2 * a.conductivity_W_m_K()) +
                            (b.outer_m - b.inner_m) / (2 * b.conductivity_W_m_K());
        if (std::find(contacts_.begin(), contacts_.end(), static_cast<int>(i)) != contacts_.end())
            resistance += 1 / contact_W_m2_K_;
        face_W_K_[i] = a.outer_area / resistance;
    }
}

/// From the middle of the outermost cell to the air: the face settles where conduction meets radiation and convection.
double HeatLine::end_W_K(double cell_K) const {
    const HeatCell& last = cells_.back();
    const double inside = 2 * last.conductivity_W_m_K() / (last.outer_m - last.inner_m);
    double face_K = cell_K, outside = 0;
    for (int i = 0; i < 8; ++i) {
        outside = end_.convection_W_m2_K + end_.emissivity * stefan_boltzmann_W_m2_K4 *
                                               (face_K * face_K + end_.air_K * end_.air_K) * (face_K + end_.air_K);
        face_K = (inside * cell_K + outside * end_.air_K) / (inside + outside);
    }
    return last.outer_area * inside * outside / (inside + outside);
}

bool HeatLine::step(double dt) {
    const std::size_t n = cells_.size();
    conduct();
    double scale = 0;
    for (std::size_t i = 0; i < n; ++i) {
        trial_[i] = cells_[i].enthalpy_J_m3;
        scale += cells_[i].volume * std::abs(trial_[i]);
    }
    const auto kelvin = [&](std::size_t i) { return cells_[i].curve.temperature_K(trial_[i]); };
    for (int iteration = 0; iteration < most_iterations; ++iteration) {
        const double end = end_W_K(kelvin(n - 1));
        for (std::size_t i = 0; i < n; ++i) {
            const double slope = cells_[i].curve.slope_K_m3_J(trial_[i]), t = kelvin(i);
            const double left = i > 0 ? face_W_K_[i - 1] : 0, right = i + 1 < n ? face_W_K_[i] : end;
            const double next_K = i + 1 < n ? kelvin(i + 1) : end_.air_K;
            residual_[i] = cells_[i].volume * (trial_[i] - cells_[i].enthalpy_J_m3) + dt * right * (t - next_K) +
                           (i > 0 ? dt * left * (t - kelvin(i - 1)) : 0);
            diagonal_[i] = cells_[i].volume + dt * (left + right) * slope;
            if (i > 0) upper_[i - 1] = -dt * left * slope;
            if (i + 1 < n) lower_[i + 1] = -dt * right * slope;
        }
        double worst = 0, rounding = 0; // of the largest flow of a cell
        for (std::size_t i = 0; i < n; ++i) {
            worst = std::max(worst, std::abs(residual_[i]));
            rounding = std::max(rounding, (i + 1 < n ? face_W_K_[i] : end) * dt * kelvin(i));
        }
        if (worst <= std::max(converged * scale, rounded * rounding)) {
            lost_J_ += dt * end * (kelvin(n - 1) - end_.air_K);
            for (std::size_t i = 0; i < n; ++i) cells_[i].enthalpy_J_m3 = trial_[i];
            return true;
        }
        for (std::size_t i = 1; i < n; ++i) {
            const double share = lower_[i] / diagonal_[i - 1];
            diagonal_[i] -= share * upper_[i - 1];
            residual_[i] -= share * residual_[i - 1];
        }
        for (std::size_t i = n; i-- > 0;) {
            const double beyond = i + 1 < n ? upper_[i] * residual_[i + 1] : 0;
            residual_[i] = (residual_[i] - beyond) / diagonal_[i];
            trial_[i] -= residual_[i];
        }
    }
    return false;
}

} // namespace pourbook::casting

// The universal drag curve of one geometry: force against u = mu0 sigma v a, tabulated once and interpolated, so that
// every metal, temperature, speed and sample after the first costs well under a microsecond.
//
// Table: ln(force / (u low_speed)) on Chebyshev nodes in ln u, from a hundredth of the peak's scale to 1e6 times it;
// below it falls short of the linear law by a square (to 3e-9), above it the integral itself. Relative interpolation
// error below 2e-7 (tests/unit/eddy).
#pragma once

#include "core/eddy/tube_drag.hpp"

#include <array>
#include <optional>

namespace pourbook::eddy {

struct Peak {
    double u = 0;
    double force = 0;
};

class DragCurve {
public:
    explicit DragCurve(const TubeDrag& drag);

    double low_speed() const { return drag_.low_speed(); }
    /// As TubeDrag::force, u >= 0.
    double force(double u) const;
    /// Drag relative to the linear law, 1 at u = 0.
    double relative(double u) const;
    Peak peak() const { return peak_; }
    /// The u below the peak where the drag equals a force: a stable speed of fall. Empty where the peak is below that
    /// force.
    std::optional<double> stable_balance(double force) const;
    /// The u above the peak where it does: faster, the magnet runs away. Empty where there is none up to the end of the
    /// table.
    std::optional<double> unstable_balance(double force) const;
    const TubeDrag& drag() const { return drag_; }

private:
    static constexpr std::size_t terms = 12;
    using Panel = std::array<double, terms>; // Chebyshev coefficients
    Panel panel_from(double ln_u) const;
    Peak found_peak() const;

    TubeDrag drag_;
    double ln_start_ = 0, square_ = 0;
    std::vector<Panel> panels_;
    Peak peak_;
};

} // namespace pourbook::eddy

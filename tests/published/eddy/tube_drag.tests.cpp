// Drag in a long tube against the same integral in 30-digit arithmetic (tests/eddy/make_drag_table.py), and closed
// forms.
#include "core/eddy/drag_curve.hpp"

#include "tests/published/eddy/drag_table.hpp"

#include "support/dipole.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <numbers>
#include <string>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

Magnet magnet_of(const drag_table::Row& row) {
    const std::string name = row.shape;
    const eddy::Shape shape = name == "sphere" ? eddy::Shape::sphere
                              : name == "ring" ? eddy::Shape::ring
                                               : eddy::Shape::cylinder;
    return {shape, row.outer_mm / 1000, row.inner_mm / 1000, row.length_mm / 1000};
}

} // namespace

TEST_CASE("drag agrees with 30-digit arithmetic to 1e-6 from 1e-4 to 1000 m/s", "[eddy][published]") {
    double worst = 0;
    for (const auto& row : drag_table::rows) {
        const TubeDrag drag(magnet_of(row), {row.bore_mm / 1000, row.outside_mm / 1000});
        const double got = drag.force_N(1, row.conductivity_S_m, row.speed_m_s);
        INFO(row.shape << " R " << row.outer_mm << " mm at " << row.speed_m_s << " m/s");
        CHECK(std::abs(got / row.drag_N - 1) < 1e-6); // independent method: mpmath
        worst = std::max(worst, std::abs(got / row.drag_N - 1));
    }
    WARN("largest relative error of the drag: " << worst);
}

TEST_CASE("the interpolated curve agrees with the integral", "[eddy][published]") {
    double worst = 0;
    std::map<std::string, DragCurve> curves;
    for (const auto& row : drag_table::rows) {
        const Bore bore{row.bore_mm / 1000, row.outside_mm / 1000};
        const std::string name = std::string(row.shape) + std::to_string(row.outer_mm);
        const DragCurve& curve = curves.try_emplace(name, TubeDrag(magnet_of(row), bore)).first->second;
        const double a = bore.inner_radius_m;
        const double unit = vacuum_permeability / (2 * std::numbers::pi * std::numbers::pi * std::pow(a, 4));
        const double got = unit * curve.force(vacuum_permeability * row.conductivity_S_m * row.speed_m_s * a);
        CHECK(std::abs(got / row.drag_N - 1) < 1e-6);
        worst = std::max(worst, std::abs(got / row.drag_N - 1));
    }
    WARN("largest relative error of the interpolated drag: " << worst);
}

TEST_CASE("a sphere has the closed form of the dipole", "[eddy][published]") {
    const Magnet sphere{eddy::Shape::sphere, 6e-3, 0, 12e-3};
    for (const double ratio : {1.0005, 1.02, 1.15, 2.0, 10.0}) {
        const Bore bore{6.5e-3, 6.5e-3 * ratio};
        const double closed = pourbook::testing::dipole_coefficient_N_s_m(1, 5.8e7, bore);
        CHECK(TubeDrag(sphere, bore).coefficient_N_s_m(1, 5.8e7) == Approx(closed).epsilon(1e-8));
    }
}

TEST_CASE("low-speed coefficients of cylinders agree with quadrature of the exact field", "[eddy][published]") {
    struct Case {
        Magnet magnet;
        Bore bore;
        double br, sigma, k;
    };
    // k: two-dimensional quadrature of the field by complete elliptic integrals, and the Fourier form (independent set,
    // 8 figures).
    const Case cases[] = {
        {{eddy::Shape::cylinder, 6e-3, 0, 10e-3}, {6.5e-3, 7.5e-3}, 1.30, 5.8e7, 2.1458425},
        {{eddy::Shape::cylinder, 6.35e-3, 0, 6.35e-3}, {7.85e-3, 9.75e-3}, 1.11, 1 / 1.75e-8, 0.9761963},
        {{eddy::Shape::cylinder, 7.5e-3, 0, 15e-3}, {10.5e-3, 13e-3}, 1.30, 3.5e7, 2.0022590},
    };
    for (const Case& c : cases) {
        const double k = TubeDrag(c.magnet, c.bore).coefficient_N_s_m(moment_A_m2(c.magnet, c.br, 1), c.sigma);
        CHECK(k == Approx(c.k).epsilon(5e-8));
    }
}

TEST_CASE("peak drag of a dipole", "[eddy][published]") {
    // Independent calculation of the same equations: thin wall (b/a 1.02) Rm 2.73, F 0.0546 mu0 m^2/a^4, F/(k v) 0.474;
    // b/a 2: mu0 sigma a v 9.6, F 0.0337.
    const Magnet sphere{eddy::Shape::sphere, 1e-3, 0, 2e-3};
    const double unit = 2 * std::numbers::pi * std::numbers::pi;
    const DragCurve thin(TubeDrag(sphere, {6.5e-3, 6.5e-3 * 1.02}));
    CHECK(thin.peak().u * 0.02 == Approx(2.73).epsilon(0.005));
    CHECK(thin.peak().force / unit == Approx(0.0546).epsilon(0.002));
    CHECK(thin.relative(thin.peak().u) == Approx(0.474).epsilon(0.002));
    const DragCurve thick(TubeDrag(sphere, {6.5e-3, 13e-3}));
    CHECK(thick.peak().u == Approx(9.6).epsilon(0.01));
    CHECK(thick.peak().force / unit == Approx(0.0337).epsilon(0.003));
}

// The field and the currents round a moving magnet: the push of the currents against the drag found in another way, and
// the field of plain sources.
#include "core/eddy/tube_field.hpp"
#include "core/eddy/end_effect.hpp"
#include "core/eddy/quadrature.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;
using std::numbers::pi;

namespace {

/// The wall is pushed along with the magnet by J x B of the magnet's own field (what the currents do to themselves
/// cancels): - sum of J B_r over the wall.
double push_on_wall(const Magnet& m, const Bore& bore, double sigma, double v, double br) {
    const GaussRule<12>& across = gauss_rule<12>();
    std::vector<double> r, z;
    const double half = (bore.outer_radius_m - bore.inner_radius_m) / 2;
    for (const double n : across.node) r.push_back((bore.outer_radius_m + bore.inner_radius_m) / 2 + half * n);
    const double reach = m.half_length_m() + 8 * bore.inner_radius_m, step = bore.inner_radius_m / 60;
    for (double at = -reach; at <= reach; at += step) z.push_back(at);
    const FieldGrid grid = tube_field(m, bore, sigma, v, br, r, z);
    double sum = 0;
    for (std::size_t j = 0; j < z.size(); ++j)
        for (std::size_t i = 0; i < r.size(); ++i)
            sum -= grid.current_A_m2[j * r.size() + i] * br * radial_field_over_remanence(m, r[i], z[j]) * 2 * pi *
                   r[i] * half * across.weight[i] * step;
    return sum;
}

Magnet cylinder() {
    return {Shape::cylinder, 6e-3, 0, 10e-3};
}

} // namespace

TEST_CASE("the currents' push on the wall is the drag, at any speed", "[eddy]") {
    Magnet opposed = cylinder();
    opposed.stack = {2, 2e-3, true};
    const Bore bore{7e-3, 9e-3};
    for (const Magnet& m :
         {cylinder(), Magnet{Shape::sphere, 6e-3, 0, 12e-3}, Magnet{Shape::ring, 6e-3, 2e-3, 8e-3}, opposed}) {
        const double moment = moment_A_m2(m, 1.3, 1);
        for (const double v : {0.05, 5.0, 40.0}) {
            CAPTURE(static_cast<int>(m.shape), m.stack.pieces, v);
            const double drag = TubeDrag(m, bore).force_N(moment, 58e6, v);
            CHECK(push_on_wall(m, bore, 58e6, v, 1.3) == Approx(drag).epsilon(2e-3));
        }
    }
}

TEST_CASE("the potential is that of a dipole far away, and its slope along the axis the radial field", "[eddy]") {
    const Magnet m = cylinder();
    const double far = 0.3, strength = m.volume_m3() / (4 * pi);
    CHECK(potential_over_remanence(m, far, 0) == Approx(strength / (far * far)).epsilon(1e-3));
    for (const double r : {7.5e-3, 12e-3}) {
        const double z = 4e-3, step = 1e-5;
        const double slope =
            (potential_over_remanence(m, r, z + step) - potential_over_remanence(m, r, z - step)) / (2 * step);
        CHECK(-slope == Approx(radial_field_over_remanence(m, r, z)).epsilon(1e-4));
    }
    // On the axis r A = B_z r^2 / 2, and a cylinder's field is known there in closed form.
    const double r = 1e-4, inside = m.length_m / 2 / std::hypot(m.length_m / 2, m.outer_radius_m);
    CHECK(potential_over_remanence(m, r, 0) * 2 / r == Approx(inside).epsilon(1e-3));
    const Magnet ball{Shape::sphere, 6e-3, 0, 12e-3};
    CHECK(potential_over_remanence(ball, 3e-3, 1e-3) * 2 / 3e-3 == Approx(2.0 / 3)); // uniform inside
}

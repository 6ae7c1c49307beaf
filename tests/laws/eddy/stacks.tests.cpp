// Stacks of magnets: the sum over the spectrum, the field of real space, and the wall's rings.
#include "core/eddy/drop_model.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook::eddy;

namespace {

const Bore bore{6.5e-3, 7.5e-3};

Magnet stack_of(int pieces, bool alternating, double gap_m = 0) {
    return {pourbook::eddy::Shape::cylinder, 6e-3, 0, 10e-3, {pieces, gap_m, alternating}};
}

double terminal_mm_s(const Magnet& m) {
    const double k = TubeDrag(m, bore).coefficient_N_s_m(moment_A_m2(m, 1.3, 1), 5.8e7);
    return 1000 * 7500 * m.volume_m3() * standard_gravity_m_s2 / k;
}

} // namespace

TEST_CASE("stacks of 12 x 10 mm magnets in 13/15 mm copper", "[eddy][law]") {
    // Independent calculation (Python, sum over the spectrum): 1.3 T, 58 MS/m, 7500 kg/m3, touching.
    CHECK(terminal_mm_s(stack_of(1, false)) == Approx(38.8).epsilon(2e-3));
    CHECK(terminal_mm_s(stack_of(2, false)) == Approx(58.6).epsilon(2e-3));
    CHECK(terminal_mm_s(stack_of(2, true)) == Approx(29.0).epsilon(2e-3));
    CHECK(terminal_mm_s(stack_of(3, false)) == Approx(82.9).epsilon(2e-3));
    CHECK(terminal_mm_s(stack_of(3, true)) == Approx(28.3).epsilon(2e-3));
}

TEST_CASE("magnets that touch and point alike are one long magnet", "[eddy][law]") {
    const Magnet whole{pourbook::eddy::Shape::cylinder, 6e-3, 0, 30e-3};
    CHECK(TubeDrag(stack_of(3, false), bore).low_speed() ==
          Approx(TubeDrag(whole, bore).low_speed()).epsilon(1e-6)); // law
    CHECK(radial_field_over_remanence(stack_of(3, false), 7e-3, 4e-3) ==
          Approx(radial_field_over_remanence(whole, 7e-3, 4e-3)).epsilon(1e-9));
    CHECK(axial_field_over_remanence(stack_of(3, false), 2e-3) ==
          Approx(axial_field_over_remanence(whole, 2e-3)).epsilon(1e-9));
}

TEST_CASE("far apart every magnet brakes for itself", "[eddy][law]") {
    const double one = TubeDrag(stack_of(1, false), bore).coefficient_N_s_m(1, 1);
    for (const bool alternating : {false, true}) // limit; the moment is that of both
        CHECK(TubeDrag(stack_of(2, alternating, 0.15), bore).coefficient_N_s_m(2, 1) == Approx(2 * one).epsilon(1e-3));
}

TEST_CASE("stacks by the field of real space", "[eddy][law]") {
    for (const bool alternating : {false, true})
        for (const int pieces : {2, 3}) {
            const Magnet m = stack_of(pieces, alternating, 2e-3);
            const double fourier = TubeDrag(m, bore).coefficient_N_s_m(moment_A_m2(m, 1.3, 1), 5.8e7);
            CHECK(2 * std::numbers::pi * 5.8e7 * 1.3 * 1.3 * EndEffect(m, bore).whole() ==
                  Approx(fourier).epsilon(1e-5)); // independent method
        }
}

TEST_CASE("a stack's fall with its currents followed settles where the spectrum says", "[eddy][law]") {
    for (const auto& [pieces, alternating] : {std::pair{1, false}, {2, false}, {2, true}, {3, true}}) {
        const Magnet m = stack_of(pieces, alternating);
        const DragCurve curve{TubeDrag(m, bore)};
        const EndEffect ends(m, bore);
        const FallSetup s = fall_setup(curve, ends, moment_A_m2(m, 1.3, 1), 5.8e7, 7500 * m.volume_m3(), 0.2);
        const CurrentFall f = fall_with_currents(s, WallModes(m, bore, 0.2), true);
        double seen = 0;
        for (const Instant& i : f.fall.path)
            if (i.depth_m < 0.1) seen = i.speed_m_s;
        INFO(pieces << (alternating ? " opposed" : " parallel"));
        CHECK(seen == Approx(terminal_mm_s(m) / 1000).epsilon(3e-3));
        CHECK(f.fall.time_s == Approx(fall(s).time_s).epsilon(3e-3));
    }
}

TEST_CASE("a cube's field and moment", "[eddy][law]") {
    // On the axis of a block with face S x S and length L, magnetised along it, at z from the face: Br/pi [atan(S^2/(2
    // z sqrt(4 z^2 + 2 S^2))) - the same at z + L] (two charged faces; from memory).
    const double side = 10e-3;
    const Magnet cube{pourbook::eddy::Shape::cube, side / std::numbers::sqrt2, 0, side};
    for (const double z : {1e-3, 3e-3, 8e-3}) {
        const auto face = [&](double d) {
            return std::atan(side * side / (2 * d * std::sqrt(4 * d * d + 2 * side * side)));
        };
        CHECK(axial_field_over_remanence(cube, z) ==
              Approx((face(z) - face(z + side)) / std::numbers::pi).epsilon(1e-6));
    }
    CHECK(cube.volume_m3() == Approx(1e-6));
    CHECK(scaled_form_factor(cube, 1e-3) == Approx(1).epsilon(1e-4)); // law: a dipole from afar
    const Bore wide{20e-3, 22e-3};
    const Magnet round{pourbook::eddy::Shape::cylinder, side / std::sqrt(std::numbers::pi), 0, side}; // the same face
    const double k = TubeDrag(cube, wide).coefficient_N_s_m(1, 1);
    CHECK(k == Approx(TubeDrag(round, wide).coefficient_N_s_m(1, 1)).epsilon(0.02)); // limit
    const double real =
        2 * std::numbers::pi * std::pow(vacuum_permeability / cube.volume_m3(), 2) * EndEffect(cube, wide).whole();
    CHECK(real == Approx(k).epsilon(1e-5)); // independent method
}

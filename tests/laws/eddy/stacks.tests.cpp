// Stacks of magnets: the sum over the spectrum, the field of real space, and the wall's rings.
#include "core/eddy/drop_model.hpp"

#include <catch2/catch.hpp>

#include <numbers>

using namespace pourbook::eddy;

namespace {

const Bore bore{6.5e-3, 7.5e-3};

Magnet stack_of(int pieces, bool alternating, double gap_m = 0) {
    return {Shape::cylinder, 6e-3, 0, 10e-3, {pieces, gap_m, alternating}};
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
    const Magnet whole{Shape::cylinder, 6e-3, 0, 30e-3};
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

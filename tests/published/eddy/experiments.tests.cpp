// Published drops, each with the source's own inputs; what the source does not state enters as an interval. The same
// table stands in app/help/drop-in-full.md.
#include "core/eddy/fall.hpp"
#include "core/eddy/thin_wall.hpp"

#include "support/dipole.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

struct Interval {
    double low, high;
};

// Unstated copper tube: from phosphorus-deoxidised (about 78 %IACS) to pure (102 %IACS), common practice.
constexpr Interval copper_S_m{4.5e7, 5.95e7};

struct Drop {
    Magnet magnet;
    Bore bore;
    double length_m, mass_kg;
    Interval remanence_T, conductivity_S_m;
};

Fall computed(const Drop& d, double remanence, double conductivity) {
    const DragCurve curve{TubeDrag(d.magnet, d.bore)};
    const EndEffect ends(d.magnet, d.bore);
    return fall(fall_setup(curve, ends, moment_A_m2(d.magnet, remanence, 1), conductivity, d.mass_kg, d.length_m));
}

/// Time grows with both unknowns.
Interval times(const Drop& d) {
    return {computed(d, d.remanence_T.low, d.conductivity_S_m.low).time_s,
            computed(d, d.remanence_T.high, d.conductivity_S_m.high).time_s};
}

} // namespace

TEST_CASE("samarium-cobalt cylinder in a copper tube: 12.3 s", "[eddy][published]") {
    // "Question 08/04 Falling magnet", studylib.net/doc/18213983: R 6 mm, L 10 mm, 9.3 g, tube 6.5/7.5 mm, 1 m; 12.3 s.
    // Remanence and conductivity not in the visible part: SmCo 0.85 to 1.10 T (from memory).
    const Drop d{{eddy::Shape::cylinder, 6e-3, 0, 10e-3}, {6.5e-3, 7.5e-3}, 1, 9.3e-3, {0.85, 1.10}, copper_S_m};
    const Interval t = times(d);
    WARN("computed " << t.low << " to " << t.high << " s, measured 12.3 s");
    CHECK(t.low < 12.3);
    CHECK(t.high > 12.3);
    // Calibrated: with Br 0.94 T and 5.80e7 S/m the sheet's own 81 mm/s, 12.3 s and 8 ms follow together.
    const Fall f = computed(d, 0.94, 5.80e7);
    CHECK(*f.terminal_speed_m_s == Approx(0.081).margin(0.001));
    CHECK(f.time_s == Approx(12.3).margin(0.1));
    CHECK(*f.terminal_speed_m_s / standard_gravity_m_s2 == Approx(8e-3).margin(0.5e-3));
}

TEST_CASE("stacked neodymium cylinders in 1.7 m of copper: more than 20 s, slowest in twos", "[eddy][published]") {
    // Levin, da Silveira, Rizzato, Am. J. Phys. 74, 815 (2006): more than 20 s read in the text, and that the time
    // varies non-monotonically with the number of magnets. Dimensions, mass and surface field (393 mT) from memory:
    // unconfirmed.
    std::vector<double> speeds;
    for (int n = 1; n <= 5; ++n) {
        const Magnet stack{eddy::Shape::cylinder, 6.35e-3, 0, n * 6.35e-3};
        const double moment = moment_A_m2(stack, 1.11, 1), mass = n * 6e-3;
        speeds.push_back(mass * standard_gravity_m_s2 /
                         TubeDrag(stack, {7.85e-3, 9.75e-3}).coefficient_N_s_m(moment, 1 / 1.75e-8));
    }
    CHECK(1.7 / speeds[0] > 20);
    CHECK(std::min_element(speeds.begin(), speeds.end()) == speeds.begin() + 1);
}

TEST_CASE("five-disc stack pulling a wagon: the stack alone falls faster", "[eddy][published]") {
    // rhetos.de "Kupfer-Fallrohr-Versuch": 15 mm x 36 mm, about 40 g, tube 20/22 mm, 1.45 m in about 15 s with a wagon
    // whose friction is unknown: a lower bound on the speed of the free stack. NdFeB of unknown grade: N35 to N52.
    const Magnet stack{eddy::Shape::cylinder, 7.5e-3, 0, 36e-3};
    const double k = TubeDrag(stack, {10e-3, 11e-3}).coefficient_N_s_m(moment_A_m2(stack, 1.48, 1), copper_S_m.high);
    CHECK(0.040 * standard_gravity_m_s2 / k > 1.45 / 15);
}

TEST_CASE("ball magnet of 0.1774 A m2 at 0.0621 m/s: a copper pipe of a likely size does it", "[eddy][published]") {
    // arXiv 2605.03293, from summaries; pipe and mass not visible. Mass from Br 1.0 to 1.3 T and 7500 kg/m3. The text
    // can't test the program: this only asks whether some pipe of 8 to 14 mm bore and 0.5 to 3 mm wall gives the speed.
    Interval speed{1e9, 0};
    for (const double br : {1.0, 1.3})
        for (const double bore : {4e-3, 7e-3})
            for (const double wall : {0.5e-3, 3e-3})
                for (const double sigma : {copper_S_m.low, copper_S_m.high}) {
                    const double mass = 7500 * 0.1774 * vacuum_permeability / br;
                    const double v = mass * standard_gravity_m_s2 /
                                     pourbook::testing::dipole_coefficient_N_s_m(0.1774, sigma, {bore, bore + wall});
                    speed = {std::min(speed.low, v), std::max(speed.high, v)};
                }
    CHECK(speed.low < 0.0621);
    CHECK(speed.high > 0.0621);
}

TEST_CASE("copper, aluminium and slit copper", "[eddy][published]") {
    // Pham Van Dong University journal, article 114900 (abstract): copper 16 times, aluminium 9 times slower than
    // plastic; a slit copper tube nearly as slow as a whole one. Copper over aluminium 1.8: aluminium tube of 40 to 62
    // %IACS (common practice).
    const double measured = 16.0 / 9.0;
    CHECK(copper_S_m.low / (0.62 * 58e6) < measured);
    CHECK(copper_S_m.high / (0.40 * 58e6) > measured);
    // The slit costs a quarter of the drag by the thin-wall law: it does not let the drag vanish. "Nearly identical" is
    // closer than that; the abstract gives no figure.
    CHECK(slit_drag({1}, {eddy::Shape::sphere, 1e-3, 0, 2e-3}, 8e-3) > 0.75);
}

// The wall's currents followed in time: against the steady law, an independent time-domain calculation, its own
// refinement and the balance of energy.
#include "core/eddy/drop_model.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace pourbook::eddy;

namespace {

struct Set {
    double diameter_mm, long_mm, mass_kg, bore_mm, outside_mm, tube_mm, conductivity_MS_m;
};

struct Falls {
    Fall at_once;
    CurrentFall followed, finer, closer;
    double steady_m_s = 0;
};

/// Remanence 1.3 T, recoil permeability 1.
Falls falls_of(const Set& s, double from_mm = 0) {
    const Magnet m{pourbook::eddy::Shape::cylinder, s.diameter_mm / 2e3, 0, s.long_mm / 1e3};
    const Bore b{s.bore_mm / 2e3, s.outside_mm / 2e3};
    const DragCurve curve{TubeDrag(m, b)};
    const EndEffect ends(m, b);
    const double length = s.tube_mm / 1e3;
    FallSetup setup = fall_setup(curve, ends, moment_A_m2(m, 1.3, 1), s.conductivity_MS_m * 1e6, s.mass_kg, length);
    setup.from_depth_m = from_mm / 1e3;
    const WallModes modes(m, b, length), more(m, b, length, 1.6);
    Falls f;
    f.at_once = fall(setup);
    f.followed = fall_with_currents(setup, modes, true);
    f.finer = fall_with_currents(setup, more);
    f.closer = fall_with_currents(setup, modes, false, 1e-6);
    f.steady_m_s = s.mass_kg * standard_gravity_m_s2 / setup.coefficient_N_s_m();
    return f;
}

} // namespace

TEST_CASE("rings of the wall have the inductance of known coils", "[eddy][law]") {
    // Thin ring of square section: mu0 R (ln(8 R / 0.2235 (w + h)) - 2) (Grover, Inductance Calculations, from memory),
    // to the square of section over radius.
    const RingSection ring{1, 0, 0.02, 0.02};
    CHECK(mutual_inductance_H(ring, ring) ==
          Approx(vacuum_permeability * (std::log(8 / (0.2235 * 0.04)) - 2)).epsilon(3e-4));
    // Twenty short rings make a solenoid twice its radius long: Nagaoka's coefficient 0.688423 (from memory).
    double sum = 0;
    for (int i = 0; i < 20; ++i)
        for (int j = 0; j < 20; ++j) sum += mutual_inductance_H({1, 0.1 * i, 1e-4, 0.1}, {1, 0.1 * j, 1e-4, 0.1}) / 400;
    CHECK(sum == Approx(vacuum_permeability * std::numbers::pi / 2 * 0.688423).epsilon(2e-3));
}

TEST_CASE("falls with their currents: refined, balanced, and as an independent calculation has them", "[eddy][law]") {
    // Independent: a time-domain model of coaxial rings of its own (Python, scipy), seconds.
    const struct {
        Set set;
        double independent_s, within;
    } cases[] = {{{50, 30, 0.442, 52, 150, 15, 58}, 0.096, 0.017},
                 {{20, 20, 0.047, 22, 28, 8, 477}, 0.0959, 0.003},
                 {{20, 20, 0.047, 24, 36, 30, 58}, 0.7066, 0.001},
                 {{12, 10, 0.5, 16, 18, 100, 480}, 0.2221 / 1.004, 0.001},
                 {{12, 10, 1, 16, 18, 250, 480}, 0.3179 / 1.0027, 0.001},
                 {{12, 10, 3, 16, 18, 250, 480}, 0.24982 / 1.0012, 0.001}};
    for (const auto& [set, independent, within] : cases) {
        const Falls f = falls_of(set);
        INFO(set.tube_mm << " mm: at once " << f.at_once.time_s << " s, followed " << f.followed.fall.time_s << " s");
        CHECK(f.followed.fall.fault == "");
        CHECK(f.followed.fall.time_s == Approx(independent).epsilon(within));
        CHECK(f.finer.fall.time_s == Approx(f.followed.fall.time_s).epsilon(3e-3));  // own refinement
        CHECK(f.closer.fall.time_s == Approx(f.followed.fall.time_s).epsilon(3e-4)); // own steps
        CHECK(std::abs(f.followed.balance) < 1e-6);                                  // energy
    }
}

TEST_CASE("deep in a tube the currents that are followed brake as the steady law says", "[eddy][law]") {
    // A magnet so heavy that at its terminal speed the drag is well below the linear law.
    const Magnet m{pourbook::eddy::Shape::cylinder, 6e-3, 0, 10e-3};
    const Bore b{8e-3, 9e-3};
    const DragCurve curve{TubeDrag(m, b)};
    const EndEffect ends(m, b);
    const double length = 0.32;
    for (const double linear : {0.97, 0.9, 0.8}) {
        const double u = [&] {
            double low = 1e-3, high = curve.peak().u;
            for (int i = 0; i < 60; ++i)
                (curve.relative(std::sqrt(low * high)) > linear ? low : high) = std::sqrt(low * high);
            return low;
        }();
        FallSetup setup = fall_setup(curve, ends, moment_A_m2(m, 1.3, 1), 4.8e9, 1, length); // cold enough to be slow
        setup.mass_kg = setup.force_scale_N * curve.force(u) / standard_gravity_m_s2;
        const CurrentFall f = fall_with_currents(setup, WallModes(m, b, length), true);
        const double settled = u / setup.u_per_speed;
        double seen = 0;
        for (const Instant& i : f.fall.path)
            if (i.depth_m < 0.6 * length) seen = i.speed_m_s;
        INFO("drag over the linear law " << linear << ": " << seen << " m/s");
        CHECK(seen == Approx(settled).epsilon(3e-3)); // the closed solution of an endless tube
    }
}

TEST_CASE("where currents outlive the magnet's own time it bounces", "[eddy][law]") {
    // Independent time-domain model: 12 x 10 mm, 8.5 g, released inside 16/18 mm copper without currents.
    // 77 K: overshoots by 37 %; 30 K: from +10.7 to -7.1 mm/s about 0.96; 4 K: +10.5 to -10.1 mm/s about 0.096 mm/s.
    const auto extremes = [](double conductivity) {
        const Falls f = falls_of({12, 10, 8.5e-3, 16, 18, 90, conductivity}, 45);
        double high = 0, low = 1;
        for (const Instant& i : f.followed.fall.path) {
            if (i.depth_m > 0.06) break;
            high = std::max(high, i.speed_m_s);
            low = std::min(low, i.speed_m_s);
        }
        return std::array{high, low, f.steady_m_s};
    };
    const auto cool = extremes(480), cold = extremes(5000), coldest = extremes(50000);
    CHECK(cool[0] / cool[2] == Approx(1.37).margin(0.02));
    CHECK(cold[0] == Approx(10.7e-3).epsilon(0.02));
    CHECK(cold[1] == Approx(-7.1e-3).epsilon(0.03));
    CHECK(coldest[0] == Approx(10.5e-3).epsilon(0.02));
    CHECK(coldest[1] == Approx(-10.1e-3).epsilon(0.03));
}

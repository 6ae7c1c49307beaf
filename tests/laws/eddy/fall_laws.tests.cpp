// Laws and limits of drag and fall: scaling, thin wall, long rod, end effect, energy.
#include "core/eddy/fall.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

const Magnet cylinder{eddy::Shape::cylinder, 6e-3, 0, 10e-3};
const Bore bore{6.5e-3, 7.5e-3};

} // namespace

TEST_CASE("drag depends on conductivity and speed only through their product", "[eddy][law]") {
    const TubeDrag drag(cylinder, bore);
    for (const double v : {1e-3, 0.3, 4.0, 50.0, 900.0})
        CHECK(drag.force_N(1, 5.8e7, v) == Approx(drag.force_N(1, 5.8e6, 10 * v)).epsilon(1e-12)); // law
}

TEST_CASE("terminal speed does not change when every length is scaled", "[eddy][law]") {
    const auto speed = [](double scale) {
        const Magnet m{eddy::Shape::ring, 6e-3 * scale, 2e-3 * scale, 10e-3 * scale};
        const TubeDrag drag(m, {6.5e-3 * scale, 7.5e-3 * scale});
        return 7500 * m.volume_m3() * standard_gravity_m_s2 / drag.coefficient_N_s_m(moment_A_m2(m, 1.3, 1), 5.8e7);
    };
    CHECK(speed(10) == Approx(speed(1)).epsilon(1e-12)); // law: no length in rho g / (sigma Br^2)
}

TEST_CASE("thin wall: closed integrand with the induced field", "[eddy][law]") {
    // Limit w -> 0 of the same equations: F = mu0 m^2/(2 pi^2 a^4) int x^4 Rm K1^2 / (1 + (Rm x I1 K1)^2) dx, Rm = mu0
    // sigma w v. The table is that integral over its low-speed value (independent calculation, three figures).
    const Magnet sphere{eddy::Shape::sphere, 1e-3, 0, 2e-3};
    const double w = 1e-4;
    const TubeDrag drag(sphere, {1, 1 + w});
    const double table[][2] = {{0.1, 0.9983}, {0.3, 0.9853}, {1, 0.859},   {2, 0.613},
                               {5, 0.219},    {10, 0.0705},  {100, 8.5e-4}};
    for (const auto& [rm, share] : table) {
        const double u = rm / w;
        CHECK(drag.force(u) / (u * drag.low_speed()) == Approx(share).epsilon(0.006));
    }
    CHECK(drag.low_speed() / w == Approx(45 * std::pow(std::numbers::pi, 2) / 512).epsilon(5e-4)); // int x^4 K1^2 dx
}

TEST_CASE("fast limit: drag falls as the root of the speed once the skin is thinner than the wall", "[eddy][law]") {
    const TubeDrag drag(cylinder, bore);
    const double exponent = std::log(drag.force(4e6) / drag.force(1e6)) / std::log(4.0);
    CHECK(exponent == Approx(-0.5).margin(0.03)); // limit
}

TEST_CASE("a long rod brakes like its two poles", "[eddy][law]") {
    // Limit: far poles don't know of each other, so k / Br^2 no longer grows with the length; what is left falls as its
    // cube.
    const auto k = [](double length) {
        const Magnet rod{eddy::Shape::cylinder, 3e-3, 0, length};
        return TubeDrag(rod, {5e-3, 6e-3}).coefficient_N_s_m(moment_A_m2(rod, 1, 1), 5.8e7);
    };
    CHECK(k(0.2) == Approx(k(0.1)).epsilon(1e-3));
    CHECK((k(0.2) - k(0.1)) / (k(0.1) - k(0.05)) == Approx(1.0 / 8).epsilon(0.15));
}

TEST_CASE("a ring with a closing hole becomes a cylinder", "[eddy][law]") {
    const Magnet ring{eddy::Shape::ring, 6e-3, 1e-6, 10e-3};
    CHECK(TubeDrag(ring, bore).low_speed() == Approx(TubeDrag(cylinder, bore).low_speed()).epsilon(1e-6));
    CHECK(demagnetising_factor(ring) == Approx(demagnetising_factor(cylinder)).epsilon(1e-6));
}

TEST_CASE("demagnetising factors", "[eddy][law]") {
    // Joseph, J. Appl. Phys. 37, 4639 (1966), magnetometric, length over diameter 1: 0.3116 (from memory); 1/3 for the
    // sphere.
    CHECK(demagnetising_factor({eddy::Shape::cylinder, 5e-3, 0, 10e-3}) == Approx(0.3116).margin(5e-5));
    CHECK(demagnetising_factor({eddy::Shape::sphere, 5e-3, 0, 10e-3}) == Approx(1.0 / 3));
    CHECK(demagnetising_factor({eddy::Shape::cylinder, 5e-3, 0, 1e-5}) > 0.99); // limit: a thin sheet
    CHECK(demagnetising_factor({eddy::Shape::cylinder, 5e-3, 0, 5}) < 1e-3);    // limit: a long rod
    // Law: a ring is a cylinder less a core: shares of a solid of the same outline stay between 0 and 1, and a thin one
    // tends to 0.
    CHECK(demagnetising_factor({eddy::Shape::ring, 6e-3, 5.99e-3, 10e-3}) < 0.01);
}

TEST_CASE("Fourier and real-space coefficients agree", "[eddy][law]") {
    for (const Magnet& m :
         {cylinder, Magnet{eddy::Shape::sphere, 6e-3, 0, 12e-3}, Magnet{eddy::Shape::ring, 6e-3, 2.5e-3, 4e-3},
          Magnet{eddy::Shape::cylinder, 3e-3, 0, 30e-3}}) {
        const EndEffect ends(m, bore);
        const double fourier = TubeDrag(m, bore).coefficient_N_s_m(moment_A_m2(m, 1.3, 1), 5.8e7);
        CHECK(2 * std::numbers::pi * 5.8e7 * 1.3 * 1.3 * ends.whole() ==
              Approx(fourier).epsilon(2e-6)); // independent method
    }
}

TEST_CASE("end effect of a dipole in a thin wall", "[eddy][law]") {
    // Independent calculation: share at depth s/a, and (1/24)/(5 pi/128) of the bore radius lost per end.
    const double a = 6.5e-3;
    const EndEffect ends({eddy::Shape::sphere, 1e-3, 0, 2e-3}, {a, a * 1.0002});
    const double table[][2] = {{-1, 0.080},   {-0.5, 0.322}, {0, 0.5},     {0.25, 0.535}, {0.5, 0.678},
                               {0.75, 0.828}, {1, 0.920},    {1.5, 0.984}, {2, 0.996}};
    for (const auto& [s, share] : table) CHECK(ends.share(s * a) == Approx(share).margin(6e-4));
    double lost = 0;
    for (double s = 0; s < 30; s += 1e-3) lost += 1e-3 * (1 - ends.share((s + 5e-4) * a));
    CHECK(lost == Approx(1.0 / 24 / (5 * std::numbers::pi / 128)).epsilon(2e-4));
    CHECK(ends.slope_per_m(0.7 * a) ==
          Approx((ends.share(0.701 * a) - ends.share(0.699 * a)) / (0.002 * a)).epsilon(1e-4));
}

TEST_CASE("the fall keeps its energy and its limits", "[eddy][law]") {
    const DragCurve curve{TubeDrag(cylinder, bore)};
    const EndEffect ends(cylinder, bore);
    const double moment = moment_A_m2(cylinder, 1.3, 1), mass = 8.4823e-3;
    SECTION("long tube: length less the ends' loss over terminal speed, plus the run-up") {
        const FallSetup setup = fall_setup(curve, ends, moment, 5.8e7, mass, 1);
        const Fall f = fall(setup);
        const double vt = *f.terminal_speed_m_s;
        CHECK(vt == Approx(mass * standard_gravity_m_s2 / setup.coefficient_N_s_m()).epsilon(1e-5));
        double lost = 0;
        for (double s = 0; s < 0.2; s += 1e-5) lost += 1e-5 * (1 - ends.share(s + 5e-6));
        CHECK(f.time_s == Approx((1 - 2 * lost) / vt).epsilon(1e-3)); // limit; the run-up of 4 ms is inside
    }
    SECTION("hardly any conductor: free fall") {
        const Fall f = fall(fall_setup(curve, ends, moment, 1, mass, 1));
        CHECK(f.time_s == Approx(std::sqrt(2 / standard_gravity_m_s2)).epsilon(1e-6)); // law
        CHECK(f.heat_J < 1e-5);
    }
    SECTION("twice the conductivity, twice the time in the settled regime") {
        const double slow = fall(fall_setup(curve, ends, moment, 8e8, mass, 1)).time_s;
        CHECK(slow == Approx(2 * fall(fall_setup(curve, ends, moment, 4e8, mass, 1)).time_s).epsilon(3e-4)); // law
    }
    SECTION("no terminal speed for a magnet too heavy for the peak") {
        const Fall f = fall(fall_setup(curve, ends, moment, 5.8e7, 10, 1));
        CHECK_FALSE(f.terminal_speed_m_s);
        CHECK(f.time_s > std::sqrt(2 / standard_gravity_m_s2));
    }
    SECTION("the two speeds of balance carry the weight") {
        const FallSetup setup = fall_setup(curve, ends, moment, 5.8e7, 2, 1);
        const Fall f = fall(setup, true);
        REQUIRE(f.terminal_speed_m_s);
        CHECK(setup.drag_N(*f.terminal_speed_m_s) == Approx(2 * standard_gravity_m_s2).epsilon(1e-8));
        CHECK(setup.drag_N(*f.unstable_speed_m_s) == Approx(2 * standard_gravity_m_s2).epsilon(1e-8));
        CHECK(*f.unstable_speed_m_s > *f.terminal_speed_m_s);
    }
    SECTION("the path arrives where the summary says") {
        const Fall f = fall(fall_setup(curve, ends, moment, 5.8e6, mass, 0.3), true);
        REQUIRE(f.path.size() > 10);
        CHECK(f.path.back().time_s == Approx(f.time_s));
        CHECK(f.path.back().depth_m == Approx(0.3));
        double length = 0;
        for (std::size_t i = 1; i < f.path.size(); ++i)
            length += (f.path[i].speed_m_s + f.path[i - 1].speed_m_s) / 2 * (f.path[i].time_s - f.path[i - 1].time_s);
        CHECK(length == Approx(0.3).epsilon(2e-3)); // law: the speed's integral is the way
    }
}

TEST_CASE("moment of a sphere with a recoil permeability above 1, by hand", "[eddy]") {
    // M = (Br/mu0) / (1 + (mu_r - 1)/3) is exact for a sphere. 12 mm, 1.3 T: Br V / mu0 = 0.93600 A m2; over 1.0166667
    // for mu_r = 1.05.
    const Magnet sphere{eddy::Shape::sphere, 6e-3, 0, 12e-3};
    CHECK(moment_A_m2(sphere, 1.3, 1) == Approx(0.936004).epsilon(1e-5));
    CHECK(moment_A_m2(sphere, 1.3, 1.05) == Approx(0.936004 / 1.0166667).epsilon(1e-5));
}

TEST_CASE("a slow magnet against the plain integration of its motion", "[eddy][law]") {
    const DragCurve curve{TubeDrag(cylinder, bore)};
    const EndEffect ends(cylinder, bore);
    struct Case {
        double conductivity_S_m, length_m, within;
    };
    // fall.hpp: mostly 1e-5, at most 3e-4. The shorter the tube, the more the magnet's inertia at the ends counts.
    for (const Case& c : {Case{1.2e8, 0.3, 5e-5}, Case{6.5e7, 0.05, 3e-4}}) {
        const FallSetup s =
            fall_setup(curve, ends, moment_A_m2(cylinder, 1.3, 1), c.conductivity_S_m, 8.4823e-3, c.length_m);
        const Fall quick = fall(s);
        REQUIRE(quick.terminal_speed_m_s);
        CHECK(*quick.terminal_speed_m_s < 0.035); // slow: stiff at the ends
        const auto acceleration = [&](double z, double v) {
            const double share = std::max(ends.share(z) + ends.share(s.tube_length_m - z) - 1, 0.0);
            return s.gravity_m_s2 - s.drag_N(v) * share / s.mass_kg;
        };
        double t = 0, z = 0, v = 0;
        constexpr double h = 1e-4; // s; Runge and Kutta's fourth-order method with a fixed step
        while (z < s.tube_length_m) {
            const double a1 = acceleration(z, v), v2 = v + h / 2 * a1, a2 = acceleration(z + h / 2 * v, v2);
            const double v3 = v + h / 2 * a2, a3 = acceleration(z + h / 2 * v2, v3);
            const double v4 = v + h * a3, a4 = acceleration(z + h * v3, v4);
            z += h / 6 * (v + 2 * v2 + 2 * v3 + v4);
            v += h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
            t += h;
        }
        t -= (z - s.tube_length_m) / v;
        INFO(quick.time_s << " s against " << t << " s");
        CHECK(quick.time_s == Approx(t).epsilon(c.within));
        CHECK(quick.exit_speed_m_s == Approx(v).epsilon(2e-3));
    }
}

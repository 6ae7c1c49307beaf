// Laws that every fall keeps, over random magnets and tubes: short, thin, thick, cold, heavy and weak ones. 500 of
// them; POURBOOK_FALLS sets another number (10000 were run by hand), POURBOOK_FALLS_FROM the first that is looked at.
#include "core/eddy/drop_model.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <random>

using namespace pourbook::eddy;

namespace {

struct RandomFall {
    Magnet magnet;
    Bore bore;
    double remanence_T = 0, mass_kg = 0, length_m = 0, conductivity_S_m = 0;
};

RandomFall drawn(std::mt19937_64& random) {
    const auto between = [&](double low, double high) { // evenly in the logarithm
        return low * std::pow(high / low, std::uniform_real_distribution<double>(0, 1)(random));
    };
    RandomFall f;
    const double a = between(1.5e-3, 80e-3), radius = a * std::uniform_real_distribution<double>(0.3, 0.99)(random);
    f.magnet.shape = static_cast<Shape>(std::uniform_int_distribution<int>(0, 2)(random));
    f.magnet.outer_radius_m = radius;
    f.magnet.inner_radius_m = f.magnet.shape == pourbook::eddy::Shape::ring ? radius * between(0.1, 0.9) : 0;
    f.magnet.length_m = f.magnet.shape == pourbook::eddy::Shape::sphere ? 2 * radius : radius * between(0.1, 10);
    f.bore = {a, a * (1 + between(0.01, 4))};
    f.remanence_T = between(0.2, 1.5);
    f.mass_kg = f.magnet.volume_m3() * 7500 * between(1, 50);
    f.length_m = a * between(0.05, 300);
    f.conductivity_S_m = between(1e5, 1e11);
    return f;
}

struct Tried {
    FallSetup setup;
    Fall fall;
    double largest_u = 0; // mu0 sigma v a
};

Tried tried(const DragCurve& curve, const EndEffect& ends, const RandomFall& f, double conductivity, double length) {
    const FallSetup setup =
        fall_setup(curve, ends, moment_A_m2(f.magnet, f.remanence_T, 1.05), conductivity, f.mass_kg, length);
    Tried t{setup, fall(setup, true)};
    for (const Instant& i : t.fall.path) t.largest_u = std::max(t.largest_u, setup.u_per_speed * i.speed_m_s);
    return t;
}

void check_laws(const RandomFall& f) {
    const DragCurve curve{TubeDrag(f.magnet, f.bore)};
    const EndEffect ends(f.magnet, f.bore);
    const Tried here = tried(curve, ends, f, f.conductivity_S_m, f.length_m);
    const Fall& fall = here.fall;
    const double quickest = std::sqrt(2 * f.length_m / standard_gravity_m_s2),
                 lost = f.mass_kg * standard_gravity_m_s2 * f.length_m;
    CHECK(fall.fault == ""); // finite, heat equal to the work
    CHECK(fall.time_s >= quickest);
    CHECK(fall.exit_speed_m_s <= standard_gravity_m_s2 * quickest * (1 + 1e-5));
    CHECK(fall.heat_J >= 0);
    CHECK(fall.heat_J <= lost * (1 + 1e-9));
    for (const Instant& i : fall.path) CHECK((i.speed_m_s >= 0 && i.drag_N >= 0 && i.depth_m <= f.length_m));
    constexpr double slack = 1 - 3e-5; // of two integrations
    CHECK(tried(curve, ends, f, f.conductivity_S_m, 1.2 * f.length_m).fall.time_s > fall.time_s);
    // More metal brakes more only while the drag grows with the speed.
    const Tried better = tried(curve, ends, f, 1.3 * f.conductivity_S_m, f.length_m);
    if (std::max(here.largest_u, better.largest_u) * 1.3 < curve.peak().u)
        CHECK(better.fall.time_s >= fall.time_s * slack);
    const Bore thicker{f.bore.inner_radius_m, f.bore.outer_radius_m * 1.1};
    const DragCurve thick_curve{TubeDrag(f.magnet, thicker)};
    const EndEffect thick_ends(f.magnet, thicker);
    const Tried thick = tried(thick_curve, thick_ends, f, f.conductivity_S_m, f.length_m);
    // A thicker wall holds longer if all along the thinner one's fall its drag would be more: not where its own induced
    // field takes more than the new metal gives.
    const auto drag_N = [](const FallSetup& s, const Instant& i) { return s.drag_N(i.speed_m_s) * s.share(i.depth_m); };
    if (std::all_of(fall.path.begin(), fall.path.end(),
                    [&](const Instant& i) { return drag_N(thick.setup, i) >= drag_N(here.setup, i); }))
        CHECK(thick.fall.time_s >= fall.time_s * slack);
}

int asked(const char* name, int otherwise) {
    const char* words = std::getenv(name);
    return words ? std::atoi(words) : otherwise;
}

} // namespace

TEST_CASE("random falls keep the laws of motion", "[eddy][law]") {
    const int count = asked("POURBOOK_FALLS", 500), from = asked("POURBOOK_FALLS_FROM", 0);
    std::mt19937_64 random(20);
    for (int i = 0; i < from; ++i) drawn(random); // so that a fall is the same whatever is looked at
    for (int i = from; i < from + count; ++i) {
        const RandomFall f = drawn(random);
        INFO("fall " << i << ": shape " << static_cast<int>(f.magnet.shape) << ", radius " << f.magnet.outer_radius_m
                     << ", hole " << f.magnet.inner_radius_m << ", length " << f.magnet.length_m << ", bore radius "
                     << f.bore.inner_radius_m << ", outside " << f.bore.outer_radius_m << ", tube " << f.length_m
                     << ", Br " << f.remanence_T << ", mass " << f.mass_kg << ", conductivity " << f.conductivity_S_m);
        check_laws(f);
    }
}

TEST_CASE("short, thick and strong tubes at room temperature and in the cold", "[eddy][law]") {
    // Independent integration (own low-speed drag from the real-space field, LSODA at 1e-10) of equal inputs: 50 x 30
    // mm, 442 g, in 52/150 mm, 58 MS/m; 20 x 20 mm in 22/28 mm, 477 MS/m, and in 24/36 mm, 58 MS/m.
    const auto time_of = [](double diameter, double long_mm, double mass, double bore, double outside, double tube,
                            double conductivity) {
        const Magnet m{pourbook::eddy::Shape::cylinder, diameter / 2e3, 0, long_mm / 1e3};
        const Bore b{bore / 2e3, outside / 2e3};
        const DragCurve curve{TubeDrag(m, b)};
        const EndEffect ends(m, b);
        const Fall f = fall(fall_setup(curve, ends, moment_A_m2(m, 1.3, 1), conductivity * 1e6, mass, tube / 1e3));
        CHECK(f.fault == "");
        return f.time_s;
    };
    CHECK(time_of(50, 30, 0.442, 52, 150, 12, 58) == Approx(0.065).margin(5e-4));
    CHECK(time_of(50, 30, 0.442, 52, 150, 15, 58) == Approx(0.104).margin(1e-3));
    CHECK(time_of(50, 30, 0.442, 52, 150, 18, 58) == Approx(0.195).margin(1e-3));
    CHECK(time_of(20, 20, 0.047, 22, 28, 8, 477) == Approx(0.0994).epsilon(5e-3));
    CHECK(time_of(20, 20, 0.047, 24, 36, 30, 58) == Approx(0.7083).epsilon(5e-4));
}

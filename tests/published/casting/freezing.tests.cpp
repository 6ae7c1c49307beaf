// Freezing times against exact solutions and an independent model.
#include "core/casting/freezing.hpp"
#include "core/casting/feeder.hpp"
#include "core/casting/heat_line.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>

using namespace pourbook::casting;

namespace {

constexpr double pi = 3.14159265358979;

/// Root of Neumann's equation for a wall held at T0 and a melt at T1 (Carslaw and Jaeger, Conduction of Heat in Solids,
/// 2nd edition, section 11.2): exp(-l^2)/erf(l) - (k_l/k_s) sqrt(a_s/a_l) (T1 - Tm)/(Tm - T0) exp(-l^2 a_s/a_l)/
/// erfc(l sqrt(a_s/a_l)) = l sqrt(pi) L / (c_s (Tm - T0)).
double neumann_root(const MetalHeat& m, double wall_K, double melt_K) {
    const double as = m.solid_W_m_K / (m.density_kg_m3 * m.solid_J_kg_K);
    const double al = m.melt_W_m_K / (m.density_kg_m3 * m.melt_J_kg_K);
    const double below = m.solidus_K - wall_K, above = melt_K - m.solidus_K, r = std::sqrt(as / al);
    const auto f = [&](double l) {
        return std::exp(-l * l) / std::erf(l) -
               m.melt_W_m_K / m.solid_W_m_K * r * above / below * std::exp(-l * l * r * r) / std::erfc(l * r) -
               l * std::sqrt(pi) * m.fusion_J_kg / (m.solid_J_kg_K * below);
    };
    double low = 1e-4, high = 3;
    for (int i = 0; i < 80; ++i) {
        const double middle = (low + high) / 2;
        (f(middle) > 0 ? low : high) = middle;
    }
    return low;
}

FreezingCase in_shell(const MetalHeat& m, double half_m, double pour_K, double mould_C) {
    FreezingCase c;
    c.section.half_m = half_m;
    c.metal = m;
    c.mould = {0.7, 1650, 1100};
    c.outside = {293.15, 0.9, 10};
    c.pour_K = pour_K;
    c.mould_K = mould_C + 273.15;
    c.wall_m = 0.01035;
    return c;
}

} // namespace

TEST_CASE("Neumann's two-phase solution within one per cent") {
    // Wall and mould made perfect: a mould of no thickness that conducts and loses heat without limit, at T0.
    for (const MetalHeat& m :
         {MetalHeat{2400, 1000, 1100, 390e3, 200, 90, 933, 933}, MetalHeat{7000, 500, 600, 250e3, 40, 40, 1500, 1500},
          MetalHeat{8000, 450, 520, 205e3, 330, 165, 1358, 1358}}) {
        for (const double superheat_K : {0.0, 60.0, 200.0}) {
            FreezingCase c;
            c.section.half_m = 0.15; // the far side is not felt in the time that is watched
            c.metal = m;
            c.mould = {1e4, 1000, 1};
            c.outside = {400, 0, 1e7};
            c.pour_K = m.solidus_K + superheat_K;
            c.mould_K = 400;
            c.wall_m = 1e-5;
            const auto course = freezing_course(c, {400, 2, 0.002});
            REQUIRE(course);
            const double l = neumann_root(m, 400, c.pour_K);
            const double as = m.solid_W_m_K / (m.density_kg_m3 * m.solid_J_kg_K);
            for (const FrozenAt& cell : course->cells) {
                const double depth = c.section.half_m - cell.radius_m + c.section.half_m / 400 / 2; // its far edge
                if (depth < 0.03 || depth > 0.05) continue;
                INFO("superheat " << superheat_K << " depth " << depth);
                CHECK(cell.seconds == Approx(depth * depth / (4 * l * l * as)).epsilon(0.01));
            }
            CHECK(course->heat_error < 1e-6);
        }
    }
}

TEST_CASE("Chvorinov's rule is the limit of a thick cold mould and a metal that conducts well") {
    const MetalHeat metal{8000, 1, 1, 200e3, 1e5, 1e5, 1358, 1358}; // no heat but that of fusion
    FreezingCase c = in_shell(metal, 0.005, 1358, 20);
    c.mould = {0.6, 1500, 1170};
    c.wall_m = 0.3;
    const auto course = freezing_course(c, {12, 150, 0.005});
    REQUIRE(course);
    const double k = chvorinov_constant_s_m2({8000, 200e3, 1358}, {0.6, 1500, 1170, 293.15});
    CHECK(course->freezing_s == Approx(k * 0.005 * 0.005).epsilon(0.02));
}

TEST_CASE("freezing in a preheated shell against an independent one-dimensional model") {
    // A second model of slab and shell, written apart from this program in another language, gave these times for the
    // shell data in use (0.7 W/(m.K), 1650 kg/m3, 1100 J/(kg.K), 10.35 mm, radiating outside). Aim: a factor of 1.3.
    struct Row {
        MetalHeat metal;
        double half_mm, pour_C;
        std::array<std::array<double, 2>, 6> times; // mould degC, s; 0: none
    };
    const MetalHeat copper{7990, 480, 500, 207e3, 350, 165, 1357.77, 1357.77};
    const MetalHeat sterling{9200, 290, 310, 110e3, 330, 165, 1052, 1166};
    const MetalHeat tin{6980, 250, 245, 59.5e3, 60, 30, 505.08, 505.08};
    const std::array rows = {
        Row{copper, 1.49, 1230, {{{20, 6}, {300, 11}, {600, 30}, {750, 57}, {900, 103}, {1050, 153}}}},
        Row{copper, 8.33, 1230, {{{20, 223}, {300, 340}, {600, 458}, {750, 512}, {900, 562}, {1050, 608}}}},
        Row{sterling, 1.49, 960, {{{20, 4}, {300, 10}, {550, 37}, {}, {}, {}}}},
        Row{tin, 1.49, 330, {{{20, 10}, {100, 27}, {150, 67}, {}, {}, {}}}},
        Row{tin, 8.33, 330, {{{20, 549}, {100, 961}, {150, 1209}, {}, {}, {}}}},
    };
    for (const Row& row : rows)
        for (const auto& [mould_C, seconds] : row.times) {
            if (seconds == 0) continue;
            const auto course = freezing_course(in_shell(row.metal, row.half_mm / 1000, row.pour_C + 273.15, mould_C));
            REQUIRE(course);
            INFO(row.metal.density_kg_m3 << " " << row.half_mm << " mm, mould " << mould_C << ": " << course->freezing_s
                                         << " against " << seconds);
            CHECK(course->freezing_s < 1.3 * seconds);
            CHECK(course->freezing_s > seconds / 1.3);
            CHECK(course->heat_error < 1e-6);
        }
}

TEST_CASE("a core and a shell on both sides of a thin tube freeze it as a slab of its wall") {
    // The core of 22 mm holds as much heat as the shell outside it lacks: within a tenth.
    FreezingCase slab = in_shell({7990, 480, 500, 207e3, 350, 165, 1357.77, 1357.77}, 0.0015, 1500, 20);
    FreezingCase tube = slab;
    tube.section.core_m = 0.011;
    CHECK(freezing_course(tube)->freezing_s == Approx(freezing_course(slab)->freezing_s).epsilon(0.1));
}

TEST_CASE("heat flows from the middle outward and hotter moulds freeze slower (law)") {
    double before = 0;
    for (const double mould_C : {20.0, 300.0, 600.0, 900.0}) {
        const auto course =
            freezing_course(in_shell({7990, 480, 500, 207e3, 350, 165, 1357.77, 1357.77}, 0.01, 1500, mould_C));
        REQUIRE(course);
        CHECK(course->freezing_s > before);
        CHECK(course->superheat_gone_s < course->freezing_s);
        CHECK(course->last_radius_m < 0.002);
        before = course->freezing_s;
    }
    // A shell hotter than the metal melts cools in the air, and the metal with it.
    const auto hot = freezing_course(in_shell({7990, 480, 500, 207e3, 350, 165, 1357.77, 1357.77}, 0.01, 1500, 1100));
    REQUIRE(hot);
    CHECK(hot->freezing_s > before);
    CHECK(hot->heat_error < 1e-6);
}

TEST_CASE("an empty shell from the kiln cools as a body of one temperature must") {
    // Thin and conducting well: rho c d dT/dt = -eps sigma (T^4 - Ta^4) - h (T - Ta), stepped here by itself.
    const Outside outside{293.15, 0.9, 10};
    const auto kelvin = empty_mould_K({50, 1650, 1100}, 0.01, 1023.15, outside, {30, 120});
    REQUIRE(kelvin);
    double t = 1023.15;
    for (int i = 0; i < 1200; ++i) {
        t -= 0.1 * (0.9 * 5.670374419e-8 * (std::pow(t, 4) - std::pow(293.15, 4)) + 10 * (t - 293.15)) /
             (1650 * 1100 * 0.01);
        if (i == 299) CHECK(kelvin->at(0) == Approx(t).epsilon(0.002));
    }
    CHECK(kelvin->at(1) == Approx(t).epsilon(0.004));
}

// The defining fixed points of ITS-90: H. Preston-Thomas, Metrologia 27, 3-10 (1990), table 1.
#include "support/small_catalogue.hpp"

#include "core/evaluate/evaluate.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

TEST_CASE("the melting points fixed by ITS-90 are exact") {
    struct Point {
        const char* metal;
        double kelvin;
    };
    for (const Point& p : {Point{"mercury", 234.3156}, Point{"gallium", 302.9146}, Point{"indium", 429.7485},
                           Point{"tin", 505.078}, Point{"zinc", 692.677}, Point{"aluminium", 933.473},
                           Point{"silver", 1234.93}, Point{"gold", 1337.33}, Point{"copper", 1357.77}}) {
        INFO(p.metal);
        const Catalogue& c = real_catalogue();
        const auto e = evaluate(c, *c.metal(p.metal), "melting_point", {});
        REQUIRE(e);
        CHECK(e->value_si == Approx(p.kelvin).epsilon(0).margin(1e-9));
        CHECK(e->standard_uncertainty_si == 0);
        CHECK(e->sources.front().key == "its-90");
        CHECK(e->sources.size() == 1);
    }
}

// Speed of sound in a thin rod, CRC Handbook of Chemistry and Physics, section 14: it must be the root of E / density.
TEST_CASE("Young's modulus and density give the published speed of sound in a rod") {
    struct Rod {
        const char* metal;
        double m_s;
    };
    for (const Rod& r : {Rod{"aluminium", 5000}, Rod{"beryllium", 12870}, Rod{"copper", 3810}, Rod{"gold", 2030},
                         Rod{"iron", 5120}, Rod{"lead", 1190}, Rod{"magnesium", 4940}, Rod{"molybdenum", 5400},
                         Rod{"nickel", 4900}, Rod{"platinum", 2800}, Rod{"silver", 2680}, Rod{"tungsten", 4620},
                         Rod{"tin", 2730}, Rod{"zinc", 3850}, Rod{"titanium", 5080}, Rod{"monel-400", 4400}}) {
        INFO(r.metal);
        const Catalogue& c = real_catalogue();
        const Metal& m = *c.metal(r.metal);
        const auto e = evaluate(c, m, "young_modulus", {}), d = evaluate(c, m, "density", {});
        REQUIRE(e);
        REQUIRE(d);
        CHECK(std::sqrt(e->value_si / d->value_si) == Approx(r.m_s).epsilon(0.1));
    }
}

// The same table, rods without a record of their own: the law answers, and says so.
TEST_CASE("the speed of sound follows from modulus and density where none is cited") {
    for (const auto& [metal, m_s] : {std::pair{"tungsten", 4620.0}, {"zinc", 3850.0}, {"titanium", 5080.0}}) {
        INFO(metal);
        const Catalogue& c = real_catalogue();
        const auto v = evaluate(c, *c.metal(metal), "speed_of_sound", {});
        REQUIRE(v);
        CHECK(v->basis == Basis::carried);
        CHECK(std::abs(v->value_si - m_s) < 2 * v->standard_uncertainty_si);
    }
    const auto copper = evaluate(real_catalogue(), *real_catalogue().metal("copper"), "speed_of_sound", {});
    REQUIRE(copper);
    CHECK(copper->basis == Basis::cited);
    CHECK(copper->value_si == 3810);
}

// Bismuth is the textbook diamagnet: R. Vernon's periodic table of molar susceptibilities, -280e-6 cm3/mol.
TEST_CASE("bismuth is pushed out of a field most, manganese and palladium are drawn in most") {
    const Catalogue& c = real_catalogue();
    const auto of = [&](const char* metal) {
        const auto e = evaluate(c, *c.metal(metal), "magnetic_susceptibility", {});
        REQUIRE(e);
        return e->value_si;
    };
    CHECK(of("bismuth") == Approx(-1.65e-4).epsilon(0.01));
    for (const char* other : {"antimony", "gold", "silver", "lead", "copper", "zinc"}) CHECK(of(other) > of("bismuth"));
    for (const char* other : {"platinum", "titanium", "tungsten", "aluminium"}) CHECK(of(other) < of("palladium"));
}

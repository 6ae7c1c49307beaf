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

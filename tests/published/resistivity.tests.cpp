// Resolved values against published ones. Each figure names its source; the tolerance is that source's uncertainty or
// its last printed digit, never a guess.
#include "core/evaluate/evaluate.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

double value(const char* metal, const char* property, double kelvin) {
    Conditions at;
    at.temperature_K = kelvin;
    INFO(metal << " " << property << " at " << kelvin);
    const auto e = evaluate(real_catalogue(), *real_catalogue().metal(metal), property, at);
    if (!e) FAIL(e.problem().text);
    return e->value_si;
}

} // namespace

TEST_CASE("resistivity at 293 K and 300 K agrees with the critical evaluations") {
    // R. A. Matula, J. Phys. Chem. Ref. Data 8 (1979) 1147, recommended values in uohm cm (293 K / 300 K): Cu 1.678
    // / 1.725, Ag 1.587 / 1.629, Au 2.214 / 2.271. P. D. Desai, H. M. James, C. Y. Ho, J. Phys. Chem. Ref. Data 13
    // (1984) 1131: Al 2.650 / 2.733. Uncertainty of the evaluations near room temperature: 1 % is taken (from memory;
    // the abstracts were not reached).
    struct Row {
        const char* metal;
        double at_293, at_300;
    };
    for (const Row& r : {Row{"copper", 1.678, 1.725}, Row{"silver", 1.587, 1.629}, Row{"gold", 2.214, 2.271},
                         Row{"aluminium", 2.650, 2.733}}) {
        CHECK(value(r.metal, "resistivity", 293) == Approx(r.at_293 * 1e-8).epsilon(0.01));
        CHECK(value(r.metal, "resistivity", 300) == Approx(r.at_300 * 1e-8).epsilon(0.01));
    }
}

TEST_CASE("the data decide: silver conducts best at room temperature, copper at 77 K") {
    CHECK(value("silver", "conductivity", 293) > value("copper", "conductivity", 293));
    CHECK(value("copper", "conductivity", 77) > value("silver", "conductivity", 77));
    // CRC Handbook of Chemistry and Physics, Electrical Resistivity of Pure Metals, at 80 K in uohm cm: Cu 0.215, Ag
    // 0.289, Al 0.245 (copper from memory, silver and aluminium read). Purity moves the last digit of copper: 3 %.
    CHECK(value("copper", "resistivity", 80) == Approx(0.215e-8).epsilon(0.03));
    CHECK(value("silver", "resistivity", 80) == Approx(0.289e-8).epsilon(0.03));
    CHECK(value("aluminium", "resistivity", 80) == Approx(0.245e-8).epsilon(0.03));
}

TEST_CASE("the standard conductors are what their standards say") {
    // IEC 60028: annealed copper standard 1/58 ohm mm2/m at 20 degC. NBS Handbook 109: EC-grade aluminium 61 % IACS.
    CHECK(value("copper-etp", "conductivity", 293.15) == Approx(58e6).epsilon(0.01));
    CHECK(value("aluminium-1350", "conductivity", 293.15) == Approx(0.61 * 58e6).epsilon(0.015));
}

TEST_CASE("melting temperatures are the fixed points of ITS-90") {
    // H. Preston-Thomas, Metrologia 27 (1990) 3, table 1: freezing points in degC: In 156.5985, Sn 231.928, Zn 419.527,
    // Al 660.323, Ag 961.78, Au 1064.18, Cu 1084.62; Ga melting 29.7646; triple point of Hg -38.8344. Rounded figures
    // in sources: 0.6 K.
    struct Row {
        const char* metal;
        double celsius;
    };
    for (const Row& r : {Row{"indium", 156.5985}, Row{"tin", 231.928}, Row{"zinc", 419.527}, Row{"aluminium", 660.323},
                         Row{"silver", 961.78}, Row{"gold", 1064.18}, Row{"copper", 1084.62}, Row{"gallium", 29.7646},
                         Row{"mercury", -38.8344}})
        CHECK(value(r.metal, "liquidus", 293.15) == Approx(r.celsius + 273.15).margin(0.6));
}

TEST_CASE(
    "the melt conducts about half as well as the solid at the melting point, less for the semimetals' neighbours") {
    // N. F. Mott, Proc. R. Soc. A 146 (1934) 465: ratio liquid to solid of good conductors near 2 (Cu 2.07, Ag 1.9,
    // Au 2.28, Al 1.64, Zn 2.09, Pb 2.07, Sn 2.1; ratios from memory). Broad band: 1.4 to 2.6.
    for (const char* metal : {"copper", "silver", "gold", "aluminium", "zinc", "lead", "tin"}) {
        const double melting = value(metal, "liquidus", 293.15);
        double solid =
            no_number; // the highest cited temperature of the solid within 320 K of melting, carried by proportionality
        for (double t = melting; t > melting - 320 && std::isnan(solid); t -= 1) {
            Conditions at;
            at.temperature_K = t;
            if (const auto e = evaluate(real_catalogue(), *real_catalogue().metal(metal), "resistivity", at))
                solid = e->value_si * melting / t;
        }
        Conditions at;
        at.temperature_K = melting + 1;
        const auto liquid = evaluate(real_catalogue(), *real_catalogue().metal(metal), "resistivity", at);
        INFO(metal);
        if (!liquid || std::isnan(solid)) continue; // listed as missing by the coverage table
        CHECK(liquid->value_si / solid > 1.4);
        CHECK(liquid->value_si / solid < 2.6);
    }
}

TEST_CASE("densities at 20 degC agree with the handbook") {
    // CRC Handbook of Chemistry and Physics, Density of the elements, g/cm3 (from memory, also in Debian's
    // python3-periodictable):
    struct Row {
        const char* metal;
        double g_cm3;
    };
    for (const Row& r : {Row{"copper", 8.96}, Row{"silver", 10.50}, Row{"gold", 19.3}, Row{"aluminium", 2.70},
                         Row{"zinc", 7.14}, Row{"tin", 7.287}, Row{"lead", 11.34}, Row{"iron", 7.87},
                         Row{"nickel", 8.90}, Row{"magnesium", 1.74}, Row{"tungsten", 19.3}, Row{"platinum", 21.5}})
        CHECK(value(r.metal, "density", 293.15) == Approx(r.g_cm3 * 1000).epsilon(0.005));
}

TEST_CASE("copper of residual ratio 100 is what the agency's equation and a handbook say, by Matthiessen's rule") {
    // N. J. Simon, E. S. Drexler, R. P. Reed, NIST Monograph 177 (1992), equation 8-1 for RRR 100, uohm cm at 20, 50
    // and 77 K; 295 K: J. W. Ekin, Experimental Techniques for Low-Temperature Measurements (2006), table for RRR 100.
    // Samples of one ratio differ by some per cent: 5 %.
    struct Row {
        double kelvin, uohm_cm;
    };
    for (const Row& r : {Row{20, 0.01669}, Row{50, 0.06681}, Row{77, 0.2057}, Row{295, 1.70}}) {
        Conditions at;
        at.temperature_K = r.kelvin;
        at.rrr = 100;
        const auto e = evaluate(real_catalogue(), *real_catalogue().metal("copper"), "resistivity", at);
        REQUIRE(e);
        INFO(r.kelvin << " K: " << e->value_si * 1e8 << " uohm cm");
        CHECK(e->value_si * 1e8 == Approx(r.uohm_cm).epsilon(0.05));
    }
}

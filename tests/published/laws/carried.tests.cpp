// The laws against published figures that are not in the reference.
#include "core/evaluate/evaluate.hpp"
#include "core/laws/debye.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

/// An alloy of the real elements with one resistivity at 293 K, in microohm cm.
Metal binary(const std::string& host, double wt, const std::string& solute, double at_293_uohm_cm) {
    Metal m;
    m.slug = "binary";
    m.name = "binary alloy";
    m.kind = "alloy";
    m.family = "copper";
    m.reference_condition = "annealed";
    m.composition = {{host, wt, ""}, {solute, 100 - wt, ""}};
    m.records = {series("resistivity", {{293, at_293_uohm_cm * 1e-8}})};
    m.records.front().uncertainty_relative = 0.01;
    return m;
}

Evaluated at(const Metal& m, const char* property, double kelvin) {
    Conditions c;
    c.temperature_K = kelvin;
    const Result<Evaluated> e = evaluate(real_catalogue(), m, property, c);
    REQUIRE(e);
    return *e;
}

Evaluated at(const std::string& slug, const char* property, double kelvin = room_temperature_K) {
    return at(*real_catalogue().metal(slug), property, kelvin);
}

} // namespace

TEST_CASE("published: Debye's heat and Bloch's integral at tabulated arguments") {
    // Debye's function in units of 3R: 0.9517 at T = theta, 0.1 at T/theta = 0.1: 0.0758 (tables in textbooks of solid
    // state physics, from memory; limits: 1 and (4 pi^4/5)(T/theta)^3).
    CHECK(debye_share(1.0) == Approx(0.9517).epsilon(1e-3));
    CHECK(debye_share(0.1) == Approx(0.0758).epsilon(2e-3));
    CHECK(debye_share(0.01) == Approx(4 * std::pow(M_PI, 4) / 5 * 1e-6).epsilon(1e-4));
    // J5 of infinity = 124.43 (Ziman, Electrons and Phonons; from memory: 5! zeta(5)).
    CHECK(bloch_integral(5, 1000) == Approx(120 * 1.0369277551).epsilon(1e-4));
}

TEST_CASE("published: Matthiessen's rule on evaluated binary alloys, 293 K carried to 100 and 400 K") {
    // C. Y. Ho et al., Electrical resistivity of ten selected binary alloy systems, J. Phys. Chem. Ref. Data 12 (1983)
    // 183, as a handbook's table prints it (read): microohm cm at 100, 293 and 400 K.
    struct Row {
        const char *host, *solute;
        double wt, at_100, at_293, at_400;
    };
    for (const Row& r : {Row{"Al", "Cu", 99, 0.531, 2.74, 3.95}, Row{"Al", "Cu", 95, 0.895, 3.10, 4.33},
                         Row{"Al", "Mg", 99, 0.958, 3.18, 4.39}, Row{"Al", "Mg", 95, 3.01, 5.28, 6.51},
                         Row{"Al", "Mg", 90, 5.42, 7.76, 9.02}, Row{"Cu", "Al", 95, 7.92, 9.61, 10.7},
                         Row{"Cu", "Al", 99, 3.22, 4.60, 5.37}, Row{"Cu", "Al", 90, 8.71, 11.0, 12.3}}) {
        const Metal m = binary(r.host, r.wt, r.solute, r.at_293);
        for (const auto& [kelvin, expected] : {std::pair(100.0, r.at_100), std::pair(400.0, r.at_400)}) {
            const Evaluated e = at(m, "resistivity", kelvin);
            INFO(r.host << " " << r.wt << " " << r.solute << " at " << kelvin << " K: " << e.value_si * 1e8 << " +- "
                        << e.standard_uncertainty_si * 1e8 << ", published " << expected);
            CHECK(e.basis == Basis::carried);
            CHECK(std::abs(e.value_si * 1e8 - expected) < 2 * e.standard_uncertainty_si * 1e8);
            if (kelvin > 293) CHECK(e.value_si * 1e8 == Approx(expected).epsilon(0.04));
        }
    }
}

TEST_CASE("published: heats of fusion of aluminium-silicon by the entropies of fusion") {
    // J. Xu et al., Mater. Sci. Forum 787 (2014) 6 (abstract read): 13.14 x + 372.05 kJ/kg below the eutectic.
    for (const double silicon : {4.0, 7.0, 12.0}) {
        Metal m = binary("Al", 100 - silicon, "Si", 4);
        m.reference_condition = "as-cast";
        m.records.push_back(single("solidus", 850));
        m.records.push_back(single("liquidus", 933 - 6.6 * silicon)); // common practice, no source
        const Evaluated e = at(m, "latent_heat", room_temperature_K);
        INFO(silicon << " % Si: " << e.value_si / 1000 << " kJ/kg");
        CHECK(e.basis == Basis::estimated);
        CHECK(e.value_si / 1000 == Approx(13.14 * silicon + 372.05).epsilon(0.10));
    }
}

TEST_CASE(
    "published: no copper alloy takes more heat to melt than copper, though its silicon alone would take nine times") {
    // Trade figures of copper alloys lie below about 215 kJ/kg (from memory); those with much aluminium, whose atoms
    // are light, are left aside.
    for (const Metal& m : real_catalogue().metals) {
        if ((m.family != "bronze" && m.family != "brass") || m.content_percent("Al") > 2) continue;
        const Evaluated e = at(m, "latent_heat", room_temperature_K);
        INFO(m.slug << " " << e.value_si / 1000);
        if (e.basis == Basis::estimated) CHECK(e.value_si / 1000 < 215);
    }
}

TEST_CASE("published: specific heat at 77 K falls by Debye's law below the 100 K of the tables") {
    // Cryogenic handbooks, from memory, J/(kg K).
    for (const auto& [slug, expected] : {std::pair("aluminium", 336.0), std::pair("copper", 192.0),
                                         std::pair("lead", 114.0), std::pair("gold", 102.0)}) {
        const Evaluated e = at(slug, "specific_heat", 77);
        INFO(slug << " " << e.value_si << " +- " << e.standard_uncertainty_si);
        CHECK(std::abs(e.value_si - expected) < 2 * e.standard_uncertainty_si);
    }
}

TEST_CASE("published: alpha iron's specific heat has its peak at the Curie point") {
    // NIST WebBook, Shomate equations of alpha iron (coefficients read in public scripts): 973 at 1000 K, 1497 at 1042
    // K.
    CHECK(at("iron", "specific_heat", 1000).value_si == Approx(973.2).epsilon(0.01));
    CHECK(at("iron", "specific_heat", 1042).value_si == Approx(1497).epsilon(0.01));
}

TEST_CASE("published: no straight line across a Curie point") {
    // Handbook figures from memory, microohm cm: iron 94 at 1000 K, 102 at 1043 K, 107 at 1100 K; nickel 25.5 at 600 K,
    // 28.5 at 631 K.
    struct Hot {
        const char* slug;
        double kelvin, expected;
    };
    for (const Hot& h : {Hot{"iron", 1000, 94}, Hot{"iron", 1043, 102}, Hot{"iron", 1100, 107},
                         Hot{"nickel", 600, 25.5}, Hot{"nickel", 631, 28.5}}) {
        const Evaluated e = at(h.slug, "resistivity", h.kelvin);
        INFO(h.slug << " at " << h.kelvin << " K: " << e.value_si * 1e8 << " +- " << e.standard_uncertainty_si * 1e8);
        CHECK(std::abs(e.value_si * 1e8 - h.expected) < 1.645 * e.standard_uncertainty_si * 1e8);
    }
}

TEST_CASE("published: which record answers, cases that once stood the wrong way round") {
    // Figures of the reference itself: the finer of two equally good ones answers.
    CHECK(at("za-12", "density").value_si == Approx(6030).margin(8));  // a sheet prints 0.218 lb/in3, another 6.03
    CHECK(at("za-27", "density").value_si == Approx(5010).margin(12)); // 0.181 lb/in3; another prints 5.0
    CHECK(at("bronze-leaded-80-10-10", "density").value_si == Approx(8860).margin(30)); // sheet of CC495K
    CHECK(at("iron", "resistivity").value_si == Approx(9.61e-8).epsilon(0.002)); // CRC Handbook, 78th ed., at 20 degC
    CHECK(at("chromium", "resistivity").value_si == Approx(12.5e-8).epsilon(0.002));
    CHECK(at("tin", "resistivity").value_si == Approx(11.5e-8).epsilon(0.002));
    CHECK(at("steel-1020", "thermal_conductivity").sources.front().locator.find("1010") == std::string::npos);
    CHECK(at("aluminium", "specific_heat").value_si == Approx(897).epsilon(0.01)); // 25 degC, several tables
    CHECK(at("aluminium", "density").value_si == Approx(2699).epsilon(0.002));
}

TEST_CASE("published: a table's column of 300 K answers at 20 degC, a figure without a temperature does not") {
    const auto chosen = [](const char* slug, const char* property) {
        const Evaluated e = at(slug, property);
        for (const SourceValue& s : e.sources)
            if (s.chosen) return s.key;
        return std::string();
    };
    for (const char* slug : {"cobalt", "nickel", "tungsten"})
        CHECK(chosen(slug, "thermal_conductivity") == "incropera-a1"); // not a library's rounded figure
    CHECK(chosen("antimony", "resistivity") == "kittel");              // 295 K; a library's "40" names no temperature
}

TEST_CASE("published: cold densities follow the expansion between the two temperatures") {
    // Contraction of copper from 293 to 77 K: dL/L = 0.302 to 0.308 %, aluminium 0.39 % (cryogenic handbooks, from
    // memory).
    CHECK(at("copper", "density", 77).value_si / at("copper", "density").value_si ==
          Approx(std::pow(1.00305, 3)).epsilon(0.0006));
    CHECK(at("aluminium", "density", 77).value_si / at("aluminium", "density").value_si ==
          Approx(std::pow(1.0039, 3)).epsilon(0.001));
}

TEST_CASE("published: the specific heat of grey iron away from its cited points, past its carbon") {
    // Mean of cast irons from 20 to 500 degC: 515 J/(kg K), EN 1563 as a foundry restates it (ductile iron; the grey
    // ones of EN 1561 have the same 460 J/(kg K) from 20 to 200 degC).
    double sum = 0;
    constexpr int steps = 48;
    for (int i = 0; i <= steps; ++i)
        sum += at("iron-grey", "specific_heat", 293.15 + 480.0 * i / steps).value_si / (i % steps ? 1 : 2);
    CHECK(sum / steps == Approx(515).epsilon(0.05));
    const Evaluated hot = at("iron-grey", "specific_heat", 773.15);
    CHECK(hot.basis == Basis::carried);
    CHECK(hot.standard_uncertainty_si / hot.value_si > 0.035); // the share of carbon, sulphur and phosphorus
}

TEST_CASE("published: alloys in the cold lie in their intervals") {
    // A. F. Clark, G. E. Childs, G. H. Wallace, Cryogenics 10 (1970) 295, microohm cm (from memory; findings/data.md
    // and foundry.md D: none of them was answered, or within too little).
    struct Cold {
        const char* slug;
        double kelvin, published;
    };
    for (const Cold& c :
         {Cold{"titanium-6al-4v", 77, 150}, Cold{"titanium-6al-4v", 4, 147}, Cold{"inconel-718", 77, 110},
          Cold{"inconel-718", 4, 108}, Cold{"stainless-316", 77, 56}, Cold{"stainless-316", 4, 53.9},
          Cold{"aluminium-6061", 77, 1.66}, Cold{"aluminium-6061", 4, 1.38}, Cold{"aluminium-5083", 77, 3.33},
          Cold{"aluminium-5083", 4, 3.03}, Cold{"brass-cartridge", 77, 4.5}, Cold{"brass-cartridge", 4, 4.2}}) {
        const Evaluated e = at(c.slug, "resistivity", c.kelvin);
        INFO(c.slug << " at " << c.kelvin << " K: " << e.value_si * 1e8 << " +- " << e.standard_uncertainty_si * 1e8);
        CHECK(std::abs(e.value_si * 1e8 - c.published) < 1.645 * e.standard_uncertainty_si * 1e8);
        CHECK(e.standard_uncertainty_si < 0.4 * e.value_si); // an interval that says something
    }
}

TEST_CASE("published: gallium's melt conducts, and mild steel melts as its own carbon says") {
    CHECK(at("gallium", "resistivity", 310).value_si == Approx(25.8e-8).epsilon(0.06)); // 25.8 at 30 degC, from memory
    CHECK(at("gallium", "resistivity", 400).value_si > at("gallium", "resistivity", 310).value_si);
    // 0.20 % carbon: 1527 - 187.5 C - 6.5 Mn = 1487 degC (formula of Hirai, read; the reference names it), 1480 typical
    // (from memory); once 1468, that of 0.3 % carbon.
    const Evaluated solidus = at("steel-1020", "solidus");
    CHECK(solidus.value_si == Approx(1487 + 273.15).margin(5));
    CHECK(std::abs(solidus.value_si - (1480 + 273.15)) < 1.645 * solidus.standard_uncertainty_si);
}

TEST_CASE("published: figures an audit found wrong, beside what it expected") {
    // Expected figures: cobalt 6.24 read in the handbook's table; cold noble metals and aluminium, zinc's melt, and the
    // thermal conductivities at 77 K from memory; the rest as read in the tables named.
    struct Case {
        const char *slug, *property;
        double kelvin, low, high;
    };
    const double room = room_temperature_K;
    for (const Case& c :
         {Case{"cobalt", "resistivity", room, 5.6e-8, 6.3e-8},
          Case{"silver", "resistivity", 77, 0.265e-8, 0.285e-8},
          Case{"gold", "resistivity", 77, 0.425e-8, 0.46e-8},
          Case{"aluminium", "resistivity", 77, 0.217e-8, 0.235e-8},
          Case{"zinc", "resistivity", 700, 34e-8, 39e-8},
          Case{"silver", "thermal_conductivity", 77, 410, 530},
          Case{"lead", "thermal_conductivity", 77, 36, 45},
          Case{"iron", "thermal_conductivity", 600, 52, 58},
          Case{"nickel", "thermal_conductivity", 600, 62, 69},
          Case{"iron-grey", "resistivity", room, 50e-8, 100e-8},              // by its graphite
          Case{"aluminium-380-cast", "conductivity", room, 13.33e6, 13.93e6}, // A380.0: 23 %IACS, LM24: 24
          Case{"tin", "density", room, 7270, 7310},                           // Incropera 7310, an encyclopaedia 7290
          Case{"stainless-304", "thermal_conductivity", room, 14.5, 16},      // EN 10088-1: 15
          Case{"stainless-304", "thermal_conductivity", 373.15, 15.8, 16.6},  // the handbook's row: 16
          Case{"bronze-bell-metal", "resistivity", room, 20e-8, 40e-8},       // Wiedemann and Franz: 28 or more
          Case{"bronze-tin-cast", "thermal_conductivity", room, 48, 60},      // sheets of CuSn10 50, of CC481K 52
          Case{"bronze-gunmetal-88-10-2", "thermal_conductivity", room, 46, 60},
          Case{"sterling-silver", "solidus", room, 1070, 1082},  // 802 degC, and 806 by the diagram
          Case{"sterling-silver", "liquidus", room, 1166, 1178}, // 899, and 896
          Case{"iron-ductile", "density", room, 7050, 7250},
          Case{"brass-67", "conductivity", room, 15.4e6, 15.9e6}, // 27 %IACS; once of a page whose rows are shifted
          Case{"gallium", "thermal_conductivity", room, 41, 60},  // Wiedemann and Franz: 51; 40.6 is along one axis
          Case{"indium", "resistivity", room, 8.5e-8, 8.9e-8},    // 8.0 at 0 degC, 12.1 at 100 degC; 8.75 at 295 K
          Case{"iron-ductile", "specific_heat", room, 455, 495},
          Case{"steel-1020", "resistivity", room, 15.9e-8, 18e-8}, // 15.9 at 0 degC; once of a steel with 0.5 % C
          Case{"steel-1020", "specific_heat", room, 460, 490},     // a textbook's 486 of AISI 1025; 434 is another's
          Case{"iron-grey", "specific_heat", room, 455, 495}}) {
        const double value = at(c.slug, c.property, c.kelvin).value_si;
        INFO(c.slug << " " << c.property << " at " << c.kelvin << " K: " << value);
        CHECK(value > c.low);
        CHECK(value < c.high);
    }
    const auto k_304 = [](double kelvin) { return at("stainless-304", "thermal_conductivity", kelvin).value_si; };
    CHECK(k_304(293.15) < k_304(373.15)); // it once fell
    CHECK(k_304(373.15) < k_304(473.15));
    const Evaluated cool = at("aluminium-2024", "thermal_conductivity"),
                    warm = at("aluminium-2024", "thermal_conductivity", 373.15);
    CHECK(cool.condition == warm.condition); // it once went from T4 to T6
    CHECK(warm.value_si < 1.25 * cool.value_si);
    CHECK(at("titanium-6al-4v", "solidus").standard_uncertainty_si > 20); // calculated, not measured
    for (const char* slug : {"tin", "magnesium", "titanium"}) {           // 188, 649, 300 are printed for 100 K
        const double at_100 = at(slug, "specific_heat", 100).value_si;
        CHECK(at(slug, "specific_heat", 77).value_si < 0.97 * at_100);
    }
    for (const Metal& m : real_catalogue().metals) { // density at 77 K: once of no metal
        Conditions cold;
        cold.temperature_K = 77;
        const auto usual = evaluate(real_catalogue(), m, "density", {});
        const auto d = evaluate(real_catalogue(), m, "density", cold);
        INFO(m.slug);
        if (usual && d && usual->condition != "liquid") CHECK(d->value_si >= usual->value_si * 0.999);
    }
}

// Laws that hold over every metal of the reference, whatever the source of a figure.
#include "core/evaluate/evaluate.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

Result<Evaluated> at(const Metal& m, const char* property, double kelvin = room_temperature_K) {
    Conditions c;
    c.temperature_K = kelvin;
    return evaluate(real_catalogue(), m, property, c);
}

} // namespace

TEST_CASE("law: solidus is not above liquidus") {
    for (const Metal& m : real_catalogue().metals) {
        const auto solidus = at(m, "solidus"), liquidus = at(m, "liquidus");
        INFO(m.slug);
        if (solidus && liquidus) CHECK(solidus->value_si <= liquidus->value_si);
    }
}

TEST_CASE("law: Wiedemann and Franz, thermal and electrical conductivity go together") {
    // L0 = 2.44e-8 V2/K2 (Sommerfeld 1928). The lattice adds in poor conductors, and graphite in cast iron; tables
    // differ by temper, hence the width of the band. Silicon and other semimetals are excused.
    int compared = 0;
    for (const Metal& m : real_catalogue().metals) {
        if (m.family == "semimetal" || m.family == "iron") continue;
        const auto rho = at(m, "resistivity"), k = at(m, "thermal_conductivity");
        if (!rho || !k) continue;
        const double lorenz = rho->value_si * k->value_si / room_temperature_K;
        const double doubt =
            2 * lorenz *
            std::hypot(rho->standard_uncertainty_si / rho->value_si, k->standard_uncertainty_si / k->value_si);
        INFO(m.slug << " Lorenz number " << lorenz << " +- " << doubt);
        CHECK(lorenz + doubt > 1.8e-8);
        CHECK(lorenz - doubt < (rho->value_si < 10e-8 ? 3.6e-8 : 8e-8));
        ++compared;
    }
    CHECK(compared > 80);
}

TEST_CASE("law: within one phase the resistivity of a pure metal rises with temperature") {
    // Allotropes change the slope (titanium, zirconium, iron, cobalt, manganese, calcium), so a fall at those steps is
    // looked at only up to 400 K; silicon is a semiconductor.
    for (const Metal& m : real_catalogue().metals) {
        if (!m.is_element() || m.slug == "silicon" || m.slug == "manganese") continue;
        const auto liquidus = at(m, "liquidus");
        double before = 0;
        for (double t = 20; t <= std::min(400.0, liquidus->value_si); t += 5) {
            const auto rho = at(m, "resistivity", t);
            if (!rho) continue;
            INFO(m.slug << " at " << t << " K: " << rho->value_si << " after " << before << " ["
                        << rho->sources.front().key << "]");
            // Two sources meet where one series ends: their difference inside the uncertainty is no fall.
            CHECK(rho->value_si >= before - 2 * rho->standard_uncertainty_si);
            before = rho->value_si;
        }
    }
}

TEST_CASE(
    "law: the melt is lighter than the solid at 20 degC, by 1 to 15 %, but for the metals that expand on freezing") {
    for (const Metal& m : real_catalogue().metals) {
        const auto solid = at(m, "density"), liquid = at(m, "density_liquid");
        if (!solid || !liquid || solid->condition == "liquid") continue;
        const double ratio = liquid->value_si / solid->value_si;
        const bool expands_on_freezing = m.content_percent("Bi") > 40 || m.content_percent("Ga") > 50 ||
                                         m.content_percent("Sb") > 90 || m.slug == "silicon";
        INFO(m.slug << " liquid to solid " << ratio);
        CHECK(ratio > 0.80);
        CHECK(ratio < (expands_on_freezing ? 1.12 : 1.0));
    }
}

TEST_CASE("law: dilute alloys of copper, silver and aluminium conduct worse than the pure metal (Matthiessen)") {
    const Catalogue& c = real_catalogue();
    const struct { const char *element, *symbol; } hosts[] = {{"copper", "Cu"}, {"silver", "Ag"}, {"aluminium", "Al"}};
    for (const auto& host : hosts) {
        const auto pure = at(*c.metal(host.element), "resistivity");
        for (const Metal& m : c.metals) {
            if (m.is_element() || m.content_percent(host.symbol) < 80) continue;
            const auto alloy = at(m, "resistivity");
            INFO(m.slug);
            if (alloy)
                CHECK(alloy->value_si >=
                      pure->value_si - 2 * (alloy->standard_uncertainty_si + pure->standard_uncertainty_si));
        }
    }
}

TEST_CASE("law: Dulong and Petit, the atomic heat of solid metals at 20 degC is near 3R") {
    // 3R = 24.94 J/(mol K); light stiff lattices (Be, Si, Cr) lie below. Atomic masses: IUPAC 2021, rounded.
    const struct {
        const char* metal;
        double g_mol;
    } rows[] = {{"copper", 63.546}, {"silver", 107.868},   {"gold", 196.967},    {"aluminium", 26.982},
                {"zinc", 65.38},    {"tin", 118.71},       {"lead", 207.2},      {"iron", 55.845},
                {"nickel", 58.693}, {"platinum", 195.084}, {"tungsten", 183.84}, {"magnesium", 24.305}};
    for (const auto& r : rows) {
        const auto c = at(*real_catalogue().metal(r.metal), "specific_heat");
        INFO(r.metal);
        REQUIRE(c);
        CHECK(c->value_si * r.g_mol / 1000 == Approx(24.94).epsilon(0.10)); // the law itself holds to about 10 %
    }
}

TEST_CASE(
    "law: expansion, the product of mean coefficient and melting temperature is near 2 % for metals (Grueneisen)") {
    // E. Grueneisen, Handbuch der Physik 10 (1926): volume expansion from 0 K to melting 6 to 7 %, linear about 2 %;
    // wide band for the coefficient at 20 degC. Metals with half-covalent lattices (bismuth, gallium, manganese, the
    // semimetals) lie below it.
    for (const Metal& m : real_catalogue().metals) {
        if (!m.is_element() || m.family == "semimetal" || m.slug == "manganese" || m.slug == "gallium" ||
            m.slug == "mercury" || m.slug == "bismuth")
            continue;
        const auto alpha = at(m, "linear_expansion"), melting = at(m, "liquidus");
        if (!alpha || !melting) continue;
        INFO(m.slug << " " << alpha->value_si * melting->value_si);
        CHECK(alpha->value_si * melting->value_si > 0.008);
        CHECK(alpha->value_si * melting->value_si < 0.032);
    }
}

TEST_CASE("law: freezing contraction agrees with the densities of solid and melt") {
    // (density of the solid at melting - density of the melt) / density of the solid at melting; the solid's density at
    // melting from 20 degC by the cited mean expansion or, where that ends short, by the coefficient at 20 degC. Pure
    // metals; 3 points of a per cent.
    int compared = 0;
    for (const Metal& m : real_catalogue().metals) {
        const auto contraction = at(m, "solidification_contraction"), cold = at(m, "density"),
                   melt = at(m, "density_liquid"), alpha = at(m, "linear_expansion"), melting = at(m, "liquidus");
        if (!m.is_element() || !contraction || !cold || !melt || !alpha || !melting || cold->condition == "liquid" ||
            m.family == "semimetal")
            continue;
        if (melting->value_si > 1400) continue;
        const double solid = cold->value_si * (1 - 3 * alpha->value_si * (melting->value_si - room_temperature_K));
        const double from_densities = (solid - melt->value_si) / solid;
        INFO(m.slug << ": " << from_densities << " from densities, " << contraction->value_si << " cited");
        CHECK(std::abs(from_densities - contraction->value_si) < 0.03);
        ++compared;
    }
    CHECK(compared >= 10);
}

TEST_CASE("law: the patternmaker's allowance is of the size of the free contraction") {
    // Allowances include restraint by the mould and the liquid's last share, so they differ from coefficient times
    // cooling; by less than a factor of 2.5.
    int compared = 0;
    for (const Metal& m : real_catalogue().metals) {
        const auto allowance = at(m, "contraction_allowance"), alpha = at(m, "linear_expansion"),
                   solidus = at(m, "solidus");
        if (!allowance || !alpha || !solidus || solidus->value_si < 500 || m.family == "iron") continue;
        const double free = alpha->value_si * (solidus->value_si - room_temperature_K);
        INFO(m.slug << ": allowance " << allowance->value_si << ", coefficient times cooling " << free);
        if (m.slug == "invar") continue; // it hardly expands at 20 degC and much above its Curie point
        CHECK(allowance->value_si < 2.5 * free);
        CHECK(allowance->value_si > free / 2.5);
        ++compared;
    }
    CHECK(compared >= 20);
}

TEST_CASE("every answer names a source that the reference lists") {
    const Catalogue& c = real_catalogue();
    for (const Metal& m : c.metals)
        for (const Property& p : c.properties)
            if (const auto e = evaluate(c, m, p.id, {})) {
                INFO(m.slug << " " << p.id);
                REQUIRE_FALSE(e->sources.empty());
                for (const SourceValue& s : e->sources) CHECK(c.reference(s.key));
                const bool fixed = e->sources.front().key == "its-90"; // exact by definition
                if (!p.is_text) CHECK((std::isfinite(e->value_si) && (fixed || e->standard_uncertainty_si > 0)));
            }
}

// Melting ranges of alloys of three elements from what is known nearby.
#include "core/alloys/melting.hpp"
#include "questions/mix/mix_words.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <tuple>

using namespace pourbook;

namespace {

Result<MeltingEstimate> melting_of(const char* words) {
    const Catalogue& c = testing::real_catalogue();
    const Result<Composition> composition = composition_from(c, words);
    REQUIRE(composition);
    return estimate_melting({c, *composition});
}

void near_cited(const char* words, double solidus_C, double liquidus_C) {
    const auto m = melting_of(words);
    INFO(words << ": " << (m ? "" : m.problem().text));
    REQUIRE(m);
    INFO(m->solidus.value_si - 273.15 << " to " << m->liquidus.value_si - 273.15 << ", " << m->liquidus.rule);
    CHECK(solidus_C + 273.15 > m->solidus.low90_si);
    CHECK(solidus_C + 273.15 < m->solidus.high90_si);
    CHECK(liquidus_C + 273.15 > m->liquidus.low90_si);
    CHECK(liquidus_C + 273.15 < m->liquidus.high90_si);
    CHECK(m->solidus.value_si <= m->liquidus.value_si);
}

} // namespace

TEST_CASE("brazing alloys, carat golds and nickel silvers that are not in the reference have a melting range") {
    // Hard silver solder and 18 carat gold of jewellers' tables; C75700. From memory.
    near_cited("Ag 75 Cu 22 Zn 3", 740, 788);
    near_cited("Au 75 Ag 16 Cu 9", 895, 920);
    near_cited("Cu 65 Ni 12 Zn 23", 1000, 1040);
}

TEST_CASE("copper-tin solidus by the mill sheets") {
    // C52400, copper alloy data sheet (https://fr.scribd.com/doc/315561914): 1550 degF; C53400, 5 % tin, 1750 degF
    // (https://alloys.copper.org/alloy/C53400). Their liquidus, 1830 and 1920 degF, lies up to 12 K under the diagram.
    for (const auto& [words, solidus_C, liquidus_C] :
         {std::tuple{"Cu 90 Sn 10", 843.0, 999.0}, std::tuple{"Cu 95 Sn 5", 954.0, 1049.0}}) {
        const auto m = melting_of(words);
        REQUIRE(m);
        INFO(words << " " << m->solidus.value_si - 273.15 << " " << m->liquidus.value_si - 273.15);
        CHECK(m->solidus.value_si - 273.15 == Approx(solidus_C).margin(2));
        CHECK(m->liquidus.value_si - 273.15 == Approx(liquidus_C).margin(12));
    }
}

TEST_CASE("far from everything known there is still no value") {
    const auto m = melting_of("Ag 40 Mn 30 Ni 30");
    CHECK(!m);
}

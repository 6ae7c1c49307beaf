// Melting ranges of alloys of three elements from what is known nearby.
#include "core/alloys/melting.hpp"
#include "questions/mix/mix_words.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

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
    // C52400, copper alloy data sheet (https://fr.scribd.com/doc/315561914): 1550 to 1830 degF; C51000 and C53400:
    // 1750 degF solidus (https://alloys.copper.org/alloy/C53400).
    near_cited("Cu 90 Sn 10", 843, 999);
    near_cited("Cu 95 Sn 5", 954, 1049);
}

TEST_CASE("far from everything known there is still no value") {
    const auto m = melting_of("Ag 40 Mn 30 Ni 30");
    CHECK(!m);
}

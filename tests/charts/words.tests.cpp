#include "charts/words.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

TEST_CASE("units and numbers are written as in print") {
    CHECK(pretty_unit("W/(m.K)") == "W/(m·K)");
    CHECK(pretty_unit("uohm.cm") == "µΩ·cm");
    CHECK(pretty_unit("kg^-1 s^3 A^2 USD^-1") == "kg⁻¹ s³ A² USD⁻¹");
    CHECK(pretty_unit("1").empty());
    CHECK(pretty_number("8.7e-06") == "8.7·10⁻⁶");
    CHECK(pretty_number("1.20e+10") == "1.20·10¹⁰");
    CHECK(pretty_number("59.6") == "59.6");
    CHECK(pretty_number("weakly magnetic") == "weakly magnetic");
}

TEST_CASE("a figure says whether it is a casting's or the handbook's") {
    Conditions c;
    CHECK(std::string(state_word(c)) == "handbook metal");
    CHECK(conditions_text(c) == "at 20 °C, handbook metal, reference condition");
    c.temperature_K = 77;
    CHECK(conditions_text(c, 300) == "the worst from 77 K to 26.9 °C, handbook metal, reference condition");
    c.casting.emplace();
    CHECK(state_words(c) == "castings");
    CHECK(state_text(c) == "casting, as cast, feedstock not stated");
    c.condition = "annealed"; // stated: it overrides the casting
    CHECK(std::string(state_word(c)) == "handbook metal");
}

TEST_CASE("a resistivity in %IACS is named a conductivity") {
    const Catalogue& c = testing::real_catalogue();
    CHECK(shown_label(*c.property("resistivity"), UnitSystem::workshop) == "electrical resistivity, as conductivity");
    CHECK(shown_label(*c.property("resistivity"), UnitSystem::shown) == "electrical resistivity");
    CHECK(label_with_unit(*c.property("density"), UnitSystem::shown) == "density, g/cm³");
    CHECK(label_with_unit(*c.property("magnetic_behaviour"), UnitSystem::shown) == "magnetic behaviour");
}

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
    CHECK(temperature_text(293.15) == "293.15 K (20 °C)");
    CHECK(temperature_text(77) == "77 K (-196.15 °C)");
}

TEST_CASE("a resistivity in %IACS is named a conductivity") {
    const Catalogue& c = testing::real_catalogue();
    CHECK(shown_label(*c.property("resistivity"), UnitSystem::workshop) == "electrical resistivity, as conductivity");
    CHECK(shown_label(*c.property("resistivity"), UnitSystem::shown) == "electrical resistivity");
    CHECK(label_with_unit(*c.property("density"), UnitSystem::shown) == "density, g/cm³");
    CHECK(label_with_unit(*c.property("magnetic_behaviour"), UnitSystem::shown) == "magnetic behaviour");
}

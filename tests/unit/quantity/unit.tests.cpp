#include "core/quantity/unit.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

double si(const std::string& text) {
    const auto q = parse_quantity(text);
    INFO(text);
    REQUIRE(q);
    return q->si;
}

int column_of(const std::string& text) {
    const auto q = parse_quantity(text);
    INFO(text);
    REQUIRE_FALSE(q);
    return q.problem().column;
}

} // namespace

TEST_CASE("trade units have their exact factors") {
    // International yard and pound agreement, 1959: 1 lb = 0.45359237 kg, 1 in = 25.4 mm; troy ounce 31.1034768 g.
    CHECK(si("1lb") == Approx(0.45359237).epsilon(1e-15));
    CHECK(si("1 in") == Approx(0.0254).epsilon(1e-15));
    CHECK(si("1ozt") == Approx(0.0311034768).epsilon(1e-15));
    CHECK(si("1 lb/in3") == Approx(27679.904710203125).epsilon(1e-14));
    // IEC 60028 (1925): 100 % IACS is 58 MS/m at 20 degC.
    CHECK(si("100%IACS") == Approx(58e6).epsilon(1e-15));
    CHECK(si("1.7241 uohm.cm") == Approx(1.7241e-8).epsilon(1e-14));
    CHECK(si("1 Btu/(ft.h.degF)") == Approx(1.7307346663713909).epsilon(1e-9)); // W/(m K), international table Btu
    CHECK(si("1 cal/(g.K)") == Approx(4184).epsilon(1e-14));
}

TEST_CASE("temperatures carry their offset only when they stand alone") {
    CHECK(si("20degC") == Approx(293.15));
    CHECK(si("212 degF") == Approx(373.15));
    CHECK(si("-40 °F") == Approx(si("-40°C")));
    CHECK(si("1 1/degF") == Approx(1.8));
    CHECK(si("2 W/(m.degC)") == Approx(2));
}

TEST_CASE("spellings that people paste are the same unit") {
    for (const char* text : {"2 uohm.cm", "2 µΩ·cm", "2 μΩ·cm", "2uohm cm", "2 uohm*cm"})
        CHECK(si(text) == Approx(2e-8));
    CHECK(si("8.9 g/cm³") == Approx(8900));
    CHECK(si("8.9 g.cm-3") == Approx(8900));
    CHECK(si("17 1e-6/K") == Approx(17e-6));
}

TEST_CASE("a faulty unit is refused at its column") {
    CHECK(column_of("25 mmm") == 4);
    CHECK(column_of("twelve") == 1);
    CHECK(column_of("3 W/m.K") == 6); // ambiguous
    CHECK(column_of("3 W/(m.K") == 9);
    CHECK(column_of("3 kg/") == 6);
    CHECK_FALSE(parse_quantity(""));
    CHECK_FALSE(parse_quantity("1e400 m"));
    CHECK_FALSE(parse_quantity("nan"));
    CHECK_FALSE(parse_unit(std::string(5000, '(')));
}

TEST_CASE("a conductivity answers for a resistivity") {
    const Dimension resistivity = parse_unit("ohm.m")->dimension;
    CHECK_FALSE(parse_si("1.7e-8", resistivity, "resistivity"));
    CHECK(*parse_si("100 %IACS", resistivity, "resistivity") == Approx(1 / 58e6));
    CHECK_FALSE(parse_si("3 kg", resistivity, "resistivity"));
}

TEST_CASE("units invert: from_si undoes to_si") {
    for (const char* name :
         {"degF", "degC", "K", "lb/in3", "%IACS", "uohm.cm", "Btu/lb", "USD/ozt", "1e-6/K", "%", "mm", "cmil"}) {
        const auto unit = parse_unit(name);
        INFO(name);
        REQUIRE(unit);
        for (double x : {-40.0, 0.0, 1.0, 1234.5}) CHECK(unit->from_si(unit->to_si(x)) == Approx(x).margin(1e-9));
    }
}

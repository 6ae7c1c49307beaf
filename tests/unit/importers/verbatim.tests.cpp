#include "importers/compile/verbatim.hpp"

#include "importers/compile/figure.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

Record held(const std::string& figure, const std::string& unit) {
    Record r;
    r.property = "density";
    r.unit = unit;
    r.points.push_back(*read_figure(figure, *parse_unit(unit)));
    return r;
}

std::string wrong(const std::string& figure, const std::string& unit, const std::string& printed, double kg_mol = 0) {
    Record r = held(figure, unit);
    return check_verbatim(r, *parse_unit(unit), printed, kg_mol);
}

} // namespace

TEST_CASE("a figure is what its printed text says") {
    CHECK(wrong("643", "degC", "1190 degF").empty());
    CHECK(wrong("396.939", "kJ/kg", "10710 J/mol", 26.9815e-3).empty());
    CHECK(wrong("1.82", "%", "7/32 in/ft").empty());
    CHECK(wrong("0.83 to 1.04", "%", "1/10 to 1/8 in/ft").empty());
    CHECK(wrong("1400", "degC", "about 1400 to 1450 degC").empty());
    CHECK(wrong("234", "MPa", "34 kpsi").empty());
    CHECK(wrong("490", "MPa", "50 kgf/mm2").empty());
}

TEST_CASE("a slip in the conversion, a wrong unit and an unreadable text are named") {
    CHECK(wrong("653", "degC", "1190 degF").find("is not 653 degC") != std::string::npos);
    CHECK(wrong("460", "J/(kg.K)", "0.11 Btu/(lb.degF)").find("is not 460") != std::string::npos);
    CHECK(wrong("643", "degC", "1190 J").find("no unit") != std::string::npos);
    CHECK(wrong("643", "degC", "1190 stones").find("unknown unit") != std::string::npos);
    CHECK(wrong("643", "degC", "hot").find("does not begin with a figure") != std::string::npos);
    CHECK_FALSE(wrong("397", "kJ/kg", "10.71 kJ/mol").empty());
}

TEST_CASE("the rounding is that of the printed figure") {
    Record r = held("6.92", "g/cm3");
    REQUIRE(check_verbatim(r, *parse_unit("g/cm3"), "0.25 lb/in3", 0).empty());
    CHECK(r.points.front().half_digit_si == Approx(0.005 * 27679.9).epsilon(1e-4));
}

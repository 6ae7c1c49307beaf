#include "importers/compile/figure.hpp"
#include "importers/common/located_json.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;

namespace {

Point figure(const std::string& printed, const char* unit) {
    const auto p = read_figure(printed, *parse_unit(unit));
    INFO(printed);
    REQUIRE(p);
    return *p;
}

} // namespace

TEST_CASE("a figure keeps its print, its SI value and half its last digit") {
    const Point p = figure("1.678", "uohm.cm");
    CHECK(p.value_si == Approx(1.678e-8));
    CHECK(p.half_digit_si == Approx(0.0005e-8));
    CHECK(p.printed == "1.678");
    CHECK(figure("250", "degC").value_si == Approx(523.15));
    CHECK(figure("1.7e3", "kg/m3").half_digit_si == Approx(50));
}

TEST_CASE("ranges evaluate to their middle, bounds to nothing") {
    const Point range = figure("25 to 33", "MS/m");
    CHECK(range.value_si == Approx(29e6));
    CHECK(range.low_si == Approx(25e6));
    CHECK(figure("-2.5 to 1.6", "%").low_si == Approx(-0.025));
    const Point bound = figure(">= 58", "MS/m");
    CHECK(bound.is_bound());
    CHECK(bound.low_si == Approx(58e6));
    CHECK(std::isnan(bound.high_si));
    CHECK(figure("<= 0.1", "%").high_si == Approx(0.001));
}

TEST_CASE("what is no figure is refused") {
    for (const char* wrong : {"", "abc", "1,678", "1.6.7", "5 to", "to 5", ">= ", "1e999", "nan", "0x10"})
        CHECK_FALSE(read_figure(wrong, Unit{}));
}

TEST_CASE("JSON is read with the line of each value, and duplicates and faults are refused with their place") {
    const JsonNode n = parse_located_json("f.json", "{\n \"a\": 1,\n \"b\": [\n  \"x\" ]\n}");
    CHECK(n.find("a")->line == 2);
    CHECK(n.find("b")->items[0].line == 4);
    const auto message = [](const std::string& text) -> std::string {
        try {
            parse_located_json("f.json", text);
        } catch (const InputError& e) {
            return e.what();
        }
        return "no error";
    };
    CHECK(message("{\n\"a\": 1,\n\"a\": 2}").find("f.json:3: a: this key stands twice") == 0);
    CHECK(message("{\n\"a\": }").find("f.json:2: not valid JSON at column") == 0);
    CHECK(message(std::string(200, '[')).find("nested too deeply") != std::string::npos);
    CHECK(message("") != "no error");
}

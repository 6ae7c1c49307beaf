#include "core/quantity/number_text.hpp"

#include <catch2/catch.hpp>

#include <charconv>
#include <cmath>
#include <cstring>
#include <random>

using namespace pourbook;

namespace {

/// What the compiler's own library takes off the front.
std::pair<std::string, double> library_rest(const std::string& text) {
    double number = -7;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return {error == std::errc{} ? std::string(end, text.data() + text.size()) : text, number};
}

std::string library_text(double value) {
    char buffer[64];
    return {buffer, std::to_chars(buffer, buffer + sizeof buffer, value).ptr};
}

/// Any bits, and numbers as people write them.
std::vector<double> many_numbers() {
    std::vector<double> out;
    std::mt19937_64 draw(20261130);
    while (out.size() < 60000) {
        const std::uint64_t bits = draw();
        double any = 0;
        std::memcpy(&any, &bits, sizeof any);
        if (std::isfinite(any)) out.push_back(any);
        out.push_back(static_cast<double>(draw() % 100000000) / std::pow(10, static_cast<int>(draw() % 9)));
    }
    return out;
}

} // namespace

TEST_CASE("decimal text is read as the standard library of this compiler reads it") {
    for (const double value : many_numbers()) {
        const std::string text = library_text(value);
        std::string_view rest = text;
        double read = 0;
        INFO(text);
        REQUIRE(take_decimal(rest, read));
        REQUIRE(rest.empty());
        REQUIRE(read == value);
    }
}

TEST_CASE("decimal text ends where the number ends") {
    for (const std::string text : {"1e",
                                   "1e+",
                                   "1.",
                                   "-.5",
                                   ".",
                                   "-",
                                   "1.5eV",
                                   "0e99999",
                                   "0.000000000000000000000000000001e30",
                                   "1,5",
                                   "123456789012345678901234567890",
                                   "00000000000000000000001.5",
                                   "9007199254740993",
                                   "5e-324",
                                   "+1",
                                   "-0",
                                   " 1",
                                   "0x10",
                                   "1.7976931348623157e308",
                                   "2.2250738585072011e-308"}) {
        std::string_view rest = text;
        double read = -7;
        INFO(text);
        take_decimal(rest, read);
        const auto [library, number] = library_rest(text);
        CHECK(std::string(rest) == library);
        CHECK(read == number);
    }
}

TEST_CASE("a number beyond every double, and a word, are no number") {
    for (const std::string text : {"1e999", "-1e999", "1e-400", "inf", "nan", "infinity", ""}) {
        std::string_view rest = text;
        double read = -7;
        INFO(text);
        CHECK_FALSE(take_decimal(rest, read));
        CHECK(rest == text);
        CHECK(read == -7);
    }
}

TEST_CASE("the shortest digits are those of the standard library and read back") {
    for (const double value : many_numbers()) REQUIRE(shortest_digits(value) == library_text(value));
    for (const double value : {0.0, 1.0, 0.1, 1e22, 1e21, 123456.0, 1e5, 1e-5, -2.5e-7, 100000.0, 3e10, 0.001})
        CHECK(shortest_digits(value) == library_text(value));
    for (int power = -1000; power < 1000; ++power) { // may be one digit longer
        const double value = std::ldexp(1.0, power);
        CHECK(std::strtod(shortest_digits(value).c_str(), nullptr) == value);
    }
}

TEST_CASE("digits after the point are rounded as the standard library rounds them") {
    char buffer[400];
    int decimals = 0;
    for (const double value : many_numbers()) {
        decimals = (decimals + 1) % 17;
        const auto with = [&](std::chars_format format) {
            const auto end = std::to_chars(buffer, buffer + sizeof buffer, value, format, decimals).ptr;
            return std::string(buffer, end);
        };
        REQUIRE(fixed_digits(value, decimals) == with(std::chars_format::fixed));
        REQUIRE(scientific_digits(value, decimals) == with(std::chars_format::scientific));
    }
    CHECK(fixed_digits(0.5, 0) == "0");
    CHECK(fixed_digits(1.5, 0) == "2");
}

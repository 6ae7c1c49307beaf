#include "core/quantity/format.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

TEST_CASE("significant figures") {
    CHECK(significant(1.6784, 3) == "1.68");
    CHECK(significant(12345.6, 3) == "12300");
    CHECK(significant(0.000123, 2) == "0.00012");
    CHECK(significant(3.2e-8, 3) == "3.20e-08");
    CHECK(significant(0, 3) == "0");
    CHECK(significant(-2.5, 2) == "-2.5");
}

TEST_CASE("a value shows no more than its uncertainty supports") {
    CHECK(rounded_to(1.67842, 0.017) == "1.678");
    CHECK(rounded_to(1234.5, 100) == "1230");
    CHECK(rounded_to(1.67842, 0) == "1.6784");
}

TEST_CASE("trimmed drops what is only zeros") {
    CHECK(trimmed(293.15, 6) == "293.15");
    CHECK(trimmed(77, 6) == "77");
    CHECK(trimmed(1300, 6) == "1300");
}

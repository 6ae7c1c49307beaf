// Fineness and karat problems as published, reproduced.
#include "core/alloys/blend.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

double add(double mass, double start, double target, double added) {
    const auto m = mass_to_add_kg(mass, start, target, added);
    REQUIRE(m);
    return *m;
}

double karat(double k) {
    return 100 * k / 24;
}

} // namespace

TEST_CASE("fineness problems of published worked examples") {
    // Ganoksin forum, "Formula to raise silver fineness": 1 oz of 625 silver to 925 takes 4 oz of fine silver; 10 g
    // take 40 g.
    CHECK(add(1, 62.5, 92.5, 100) == Approx(4));
    CHECK(add(10, 62.5, 92.5, 100) == Approx(40));
    // F.D.J. tool catalogue, "Formula for raising to a karat": 7 g of 10 karat to 14 karat takes 2.8 g of 24 karat.
    CHECK(add(7, karat(10), karat(14), karat(24)) == Approx(2.8));
    // Ganoksin forum, "Raising gold carat, mathematical formula": 20 g of 10 karat to 14 karat takes 8 g.
    CHECK(add(20, karat(10), karat(14), karat(24)) == Approx(8));
    // The same thread: 9 dwt of 18 karat to 10 karat takes 7.2 dwt of alloy.
    CHECK(add(9, karat(18), karat(10), 0) == Approx(7.2));
    // Mechanical Dentistry and Metallurgy, p. 206: 6 oz of pure gold to 16 carat takes 3 oz of alloy.
    CHECK(add(6, 100, karat(16), 0) == Approx(3));
    // Krohn Industries, "Raising/reducing karat" (14 karat as 0.5833 there): 25 dwt of 14 karat to 10 karat takes 10
    // dwt; 25 dwt of 10 karat to 14 karat takes 10 dwt of fine gold. Printed factor 0.400, three figures.
    CHECK(add(25, 58.33, karat(10), 0) == Approx(10).epsilon(0.001));
    CHECK(add(25, karat(10), 58.33, 100) == Approx(10).epsilon(0.001));
}

TEST_CASE("the table of raising and reducing factors", "[fineness]") {
    struct Row {
        double from, to, added, factor;
    };
    // Ganoksin forum, "Raising gold carat", reducing and raising factors; printed to three figures. (24 to 9 karat is
    // printed 1.677 there for 1.667 and 10 to 9 karat agrees: the misprint is left out.)
    for (const Row& r : {Row{24, 22, 0, .091},
                         {24, 18, 0, .333},
                         {24, 14, 0, .714},
                         {24, 10, 0, 1.40},
                         {22, 18, 0, .222},
                         {22, 14, 0, .571},
                         {22, 10, 0, 1.20},
                         {22, 9, 0, 1.444},
                         {18, 14, 0, .286},
                         {18, 10, 0, .800},
                         {18, 9, 0, 1.00},
                         {14, 10, 0, .400},
                         {14, 9, 0, .556},
                         {10, 9, 0, .111}}) {
        INFO(r.from << " to " << r.to);
        CHECK(add(1, karat(r.from), karat(r.to), karat(r.added)) == Approx(r.factor).margin(0.0006));
    }
}

TEST_CASE("karat and fineness of a composition") {
    // Definitions: karat = 24 parts, fineness = 1000 parts (Wikipedia, Fineness: 18 karat = 18/24 = 75 %).
    const auto c = composition_of(real_catalogue().alloys, {{"Au", 75, 0}, {"Ag", 12.5, 0}, {"Cu", 12.5, 0}});
    REQUIRE(c);
    CHECK(c->karat() == Approx(18));
    CHECK(c->fineness("Au") == Approx(750));
}

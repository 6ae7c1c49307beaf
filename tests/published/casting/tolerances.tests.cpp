// Casting tolerances as reprinted from ISO 8062:1994, table 1
// (https://www.iron-foundry.com/castings-ISO8062-rough.html).
#include "support/small_catalogue.hpp"

#include "core/casting/pattern.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::casting;

TEST_CASE("total tolerance by grade and size") {
    const Catalogue& c = testing::real_catalogue();
    const Metal& copper = *c.metal("copper");
    const ToleranceTable shell = tolerances(c, copper, "shell");
    CHECK(shell.grade == "CT7");
    CHECK(tolerance_width_m(shell, 0.010) == Approx(0.74e-3)); // up to 10 mm
    CHECK(tolerance_width_m(shell, 0.012) == Approx(0.78e-3)); // 10 to 16
    CHECK(tolerance_width_m(shell, 0.050) == Approx(1.0e-3));  // 40 to 63
    CHECK(tolerance_width_m(shell, 0.100) == Approx(1.1e-3));  // 63 to 100
    CHECK(std::isnan(tolerance_width_m(shell, 0.6)));          // outside the table
    // ISO/CD 8062-2, table A.2, note 2: three, two, one grades finer below 10, 16, 25 mm.
    const ToleranceTable sand = tolerances(c, copper, "sand");
    CHECK(sand.grade == "CT13");
    CHECK(tolerance_width_m(sand, 0.008) == Approx(2.0e-3)); // CT10
    CHECK(tolerance_width_m(sand, 0.012) == Approx(3.0e-3)); // CT11
    CHECK(tolerance_width_m(sand, 0.020) == Approx(4.6e-3)); // CT12
    CHECK(tolerance_width_m(sand, 0.030) == Approx(7.0e-3)); // CT13
    CHECK(tolerances(c, copper, "plaster").grade.empty());
}

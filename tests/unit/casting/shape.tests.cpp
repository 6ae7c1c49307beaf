#include "core/casting/shape.hpp"
#include "questions/pour/part_words.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook;
using namespace pourbook::casting;
using std::numbers::pi;

namespace {

std::string fault(const std::string& drawn) {
    const Result<PartWords> part = part_from(drawn);
    return part ? "" : part.problem().text;
}

Solid solid(const std::string& drawn) {
    const Result<PartWords> part = part_from(drawn);
    REQUIRE(part);
    return *measured(*part->shape);
}

} // namespace

TEST_CASE("volume, surface and box of the shapes (elementary geometry)") {
    const Solid tube = solid("tube:12mm:16mm:100mm");
    CHECK(tube.volume_m3 == Approx(pi / 4 * (16 * 16 - 12 * 12) * 100 * 1e-9));
    CHECK(tube.surface_m2 == Approx((pi * (16 + 12) * 100 + 2 * pi / 4 * (16 * 16 - 12 * 12)) * 1e-6));
    CHECK(tube.wall_m == Approx(0.002));
    CHECK(tube.box_m[2] == Approx(0.1));
    const Solid ring = solid("ring:16mm:12mm:100mm");
    CHECK(ring.volume_m3 == Approx(tube.volume_m3));
    CHECK(solid("bar:20mmx50mm").volume_m3 == Approx(pi * 100 * 50 * 1e-9));
    CHECK(solid("plate:100mmx50mmx5mm").volume_m3 == Approx(25e-6));
    CHECK(solid("plate:100mmx50mmx5mm").surface_m2 == Approx(2 * (5000 + 500 + 250) * 1e-6));
    CHECK(solid("sphere:20mm").volume_m3 == Approx(4.0 / 3 * pi * 1000 * 1e-9));
    CHECK(solid("cone:0:20mm:30mm").volume_m3 == Approx(pi * 100 * 30 / 3 * 1e-9));
    CHECK(solid("cone:20mm:20mm:30mm").surface_m2 == Approx(solid("bar:20mm:30mm").surface_m2));
    // A frustum whose slant is 5 by Pythagoras: ends 6 and 12, 4 high. Volume pi/3 4 (9 + 18 + 36), mantle pi (3 +
    // 6) 5.
    const Solid frustum = solid("cone:6mm:12mm:4mm");
    CHECK(frustum.volume_m3 == Approx(84 * pi * 1e-9));
    CHECK(frustum.surface_m2 == Approx((45 + 9 + 36) * pi * 1e-6));
    CHECK(frustum.modulus_m() == Approx(84.0 / 90 * 1e-3));
    CHECK(solid("bar:1in:2in").box_m[0] == Approx(0.0254));
}

TEST_CASE("a part that can't be is refused by the name of its size") {
    CHECK(fault("bar:0:50mm").find("the diameter must be") != std::string::npos);
    CHECK(fault("bar:20mm:-5mm").find("the length must be") != std::string::npos);
    CHECK(fault("plate:1m:1m:50m").find("the thickness must be") != std::string::npos);
    CHECK(fault("tube:16mm:12mm:100mm").find("the bore must be smaller") != std::string::npos);
    CHECK(fault("tube:12mm:16mm").find("tube:BORE:OUTSIDE:LENGTH") != std::string::npos);
    CHECK(fault("tube:12mm:16kg:1m").find("outside diameter '16kg'") != std::string::npos);
    CHECK(fault("tube:12mm::1m").find("outside diameter") != std::string::npos);
    CHECK(fault("cone:0:0:30mm").find("both ends") != std::string::npos);
    CHECK(fault("knot:3").find("tube, bar, plate") != std::string::npos);
    CHECK(fault("stl:").find("name of a file") != std::string::npos);
    CHECK(fault("").find("is expected") != std::string::npos);
    CHECK(fault("bar:nan:1m").find("--part") != std::string::npos);
}

TEST_CASE("machining stock grows outsides and shrinks bores") {
    const casting::Shape tube = *part_from("tube:12mm:16mm:100mm")->shape;
    const Result<casting::Shape> cast = with_stock(tube, 0.001);
    REQUIRE(cast);
    CHECK(cast->size_m[0] == Approx(0.010));
    CHECK(cast->size_m[1] == Approx(0.018));
    CHECK(cast->size_m[2] == Approx(0.102));
    const Result<casting::Shape> closed = with_stock(tube, 0.006);
    REQUIRE(!closed);
    CHECK(closed.problem().kind == Problem::Kind::refused);
    CHECK(scaled(tube, 1.02).size_m[2] == Approx(0.102));
}

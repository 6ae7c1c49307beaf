// Two set-ups side by side: what they share moves together.
#include "questions/drop/against.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;

namespace {

/// Everything is stated, so that no reference is needed.
DropRequest request_of(const std::string& resistivity, const std::string& tube = "13mm:15mm:0.5m") {
    DropRequest r;
    r.setup.magnet = "sphere:12mm";
    r.setup.br = "1.3+-0.1T";
    r.setup.magnet_mass = "6.8g";
    r.setup.tube = tube;
    r.resistivity = resistivity;
    r.samples = 400;
    return r;
}

AgainstResult result_of(const DropRequest& first, const DropRequest& second) {
    static const Catalogue nothing;
    const Result<AgainstResult> r = against(nothing, {first, second});
    REQUIRE(r);
    return *r;
}

double width(const AgainstResult& r) {
    return std::log(r.ratio_high90 / r.ratio_low90);
}

} // namespace

TEST_CASE("a set-up against itself ties exactly", "[eddy]") {
    const AgainstResult r = result_of(request_of("2.0+-0.1uohm.cm"), request_of("2.0+-0.1uohm.cm"));
    CHECK(r.tie);
    CHECK(r.ratio_low90 == 1);
    CHECK(r.ratio_high90 == 1);
    CHECK(r.p_longer == 0.5);
    CHECK(r.sentence.find("can't tell them apart") != std::string::npos);
}

TEST_CASE("the same magnet cancels in the ratio, another one does not", "[eddy]") {
    const DropRequest first = request_of("2.0+-0.001uohm.cm");
    DropRequest second = request_of("4.0+-0.001uohm.cm");
    const AgainstResult same = result_of(first, second);
    CHECK_FALSE(same.second_longer);
    CHECK(same.ratio_median == Approx(2).epsilon(0.02)); // law: time goes as conductivity, but for the run-up and ends
    const double own = std::log(same.first.fall_time_high90_s / same.first.fall_time_low90_s);
    CHECK(width(same) < 0.5 * own); // the remanence, the largest doubt of each, is shared
    second.setup.br = "1.30+-0.1T"; // as strong, but not said to be the same magnet
    const AgainstResult other = result_of(first, second);
    CHECK_FALSE(other.same_magnet);
    CHECK(width(other) > 2 * width(same));
}

TEST_CASE("the wall that holds the magnet as long as the first tube does", "[eddy]") {
    DropRequest second = request_of("4.0uohm.cm");
    const AgainstResult r = result_of(request_of("2.6uohm.cm"), second);
    REQUIRE(r.equal_wall_m);
    second.setup.tube = "13mm:" + std::to_string(13 + 2e3 * *r.equal_wall_m) + "mm:0.5m";
    const AgainstResult equal = result_of(request_of("2.6uohm.cm"), second);
    CHECK(equal.second.fall.time_s == Approx(equal.first.fall.time_s).epsilon(2e-3));
    CHECK(r.sentence.find("At a wall of") != std::string::npos);
    CHECK_FALSE(result_of(request_of("1.0uohm.cm"), request_of("9.0uohm.cm")).equal_wall_m); // no wall is enough
}

TEST_CASE("a set-up that can't be computed is named", "[eddy]") {
    const Catalogue nothing;
    const Result<AgainstResult> r = against(nothing, {request_of("2uohm.cm"), request_of("2uohm.cm", "11mm:15mm:1m")});
    REQUIRE_FALSE(r);
    CHECK(r.problem().text.rfind("second set-up: ", 0) == 0);
}

TEST_CASE("slits and off-axis travel change the drag by their factor, at low speed only", "[eddy]") {
    const Catalogue nothing;
    DropRequest request = request_of("1.7uohm.cm");
    const double whole = drop(nothing, request)->coefficient_N_s_m;
    request.setup.slits = "1";
    const Result<DropResult> slit = drop(nothing, request);
    REQUIRE(slit);
    CHECK(slit->path_factor == Approx(0.768).margin(6e-4)); // independent calculation, sphere in a thin wall
    CHECK(slit->coefficient_N_s_m == Approx(whole * slit->path_factor));
    CHECK(std::isnan(slit->peak_drag_N)); // not known with a slit
    request.setup.magnet_mass = "1.5kg";  // falls where the induced field matters, whatever the metal
    CHECK_FALSE(drop(nothing, request));
    request = request_of("1.7uohm.cm", "13mm:30mm:0.5m"); // thick
    request.setup.slits = "1";
    CHECK_FALSE(drop(nothing, request));
    request = request_of("1.7uohm.cm");
    request.setup.off_axis = "0.49mm"; // rubs: the clearance is 0.5 mm
    CHECK_FALSE(drop(nothing, request));
    request.setup.off_axis = "0.3mm";
    CHECK(drop(nothing, request)->path_factor > 1);
}

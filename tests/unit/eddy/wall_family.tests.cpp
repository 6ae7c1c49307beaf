// Falls through tubes of any wall from shared curves, against each tube's own curve.
#include "core/eddy/wall_family.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

DropInputs usual() {
    DropInputs i;
    i.outer_radius_m = {6e-3, 0.05e-3, true};
    i.length_m = {10e-3, 0.1e-3, true};
    i.bore_radius_m = {6.5e-3, 0.05e-3, true};
    i.outside_radius_m = {7.5e-3, 0, true};
    i.tube_length_m = {0.5, 1e-3, true};
    i.remanence_T = {1.3, 0.05, true};
    i.density_kg_m3 = {7500, 150, true};
    return i;
}

DropInputs with_wall(double area) {
    DropInputs i = usual();
    i.outside_radius_m.value = std::sqrt(i.bore_radius_m.value * i.bore_radius_m.value + area / std::numbers::pi);
    return i;
}

} // namespace

TEST_CASE("a fall in a family of walls agrees with the fall in its own tube", "[eddy]") {
    // Independent method: the tube's own drag curve. Walls from a foil to many bores, films of tin to cold copper.
    const WallFamily family(usual());
    double worst = 0;
    for (const double area : {2e-7, 3.3e-6, 4.4e-5, 5.1e-4, 6.7e-3})
        for (const double sigma : {1e6, 2e7, 6e7, 5e8}) {
            const DropModel own(with_wall(area));
            const double expected = fall(own.setup(sigma)).time_s;
            worst = std::max(worst, std::abs(family.fall_time_s(sigma, area) / expected - 1));
        }
    WARN("largest difference from the tube's own curve: " << worst);
    CHECK(worst < 1e-3);
}

TEST_CASE("samples in a family of walls agree with each sample's own tube", "[eddy]") {
    // The cross-section moves by a factor of two both ways, as a price does; everything else stands still.
    DropInputs still = usual();
    for (Uncertain* u : {&still.outer_radius_m, &still.length_m, &still.bore_radius_m, &still.tube_length_m,
                         &still.remanence_T, &still.density_kg_m3})
        u->spread = 0;
    const WallFamily family(still);
    Draws draws(60, 1);
    const double near = 5e-5, sigma = 3e7;
    std::vector<double> areas;
    for (const double z : draws.of("price")) areas.push_back(near * std::exp(0.3 * z));
    const auto times = family.fall_times_s(near, std::vector<double>(60, sigma), areas, draws);
    for (std::size_t i = 0; i < areas.size(); i += 10) {
        const DropModel own(with_wall(areas[i]));
        CHECK(times[i] == Approx(fall(own.setup(sigma)).time_s).epsilon(3e-3));
    }
}

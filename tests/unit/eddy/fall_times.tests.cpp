// Fall times of samples from a table of a few falls, against each sample's own fall.
#include "core/eddy/fall_times.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::eddy;

TEST_CASE("sampled fall times agree with each sample's own fall", "[eddy]") {
    DropInputs i;
    i.outer_radius_m = {6e-3, 0.05e-3, true};
    i.length_m = {10e-3, 0.1e-3, true};
    i.bore_radius_m = {6.5e-3, 0.05e-3, true};
    i.outside_radius_m = {7.5e-3, 0.05e-3, true};
    i.tube_length_m = {0.5, 1e-3, true};
    i.remanence_T = {1.3, 0.05, true};
    i.density_kg_m3 = {7500, 150, true};
    const DropModel model(i);
    Draws draws(200, 3);
    const auto variations = model.variations(draws);
    const auto& spread = draws.of("metal");
    double worst = 0;
    for (const double sigma : {2e5, 2e6, 2e7, 6e7, 1e9}) {
        std::vector<double> conductivities;
        for (double z : spread) conductivities.push_back(sigma * std::exp(0.1 * z));
        const auto times = fall_times_s(model, conductivities, variations);
        for (std::size_t k = 0; k < times.size(); ++k) {
            const double own = fall(model.setup(conductivities[k], variations[k])).time_s;
            worst = std::max(worst, std::abs(times[k] / own - 1));
        }
    }
    WARN("largest difference from a sample's own fall: " << worst);
    CHECK(worst < 1e-3);
}

TEST_CASE("sampled fall times hold where the limits of a thin wall reach down to none", "[eddy]") {
    for (const double wall_m : {5e-6, 50e-6, 200e-6}) {
        DropInputs i;
        i.outer_radius_m = {7.5e-3, 0, true};
        i.length_m = {15e-3, 0, true};
        i.bore_radius_m = {9e-3, 0.05e-3, true};
        i.outside_radius_m = {9e-3 + wall_m, 0.05e-3, true};
        i.tube_length_m = {0.4, 0, true};
        i.remanence_T = {1.3, 0, true};
        i.density_kg_m3 = {7500, 0, true};
        const DropModel model(i);
        Draws draws(120, 4);
        const auto variations = model.variations(draws);
        const auto times = fall_times_s(model, std::vector<double>(variations.size(), 5.8e7), variations);
        double worst = 0;
        for (std::size_t k = 0; k < times.size(); ++k)
            worst = std::max(worst, std::abs(times[k] / fall(model.setup(5.8e7, variations[k])).time_s - 1));
        INFO(wall_m << ": " << worst);
        CHECK(worst < 0.01);
    }
}

// Variations of a magnet and a tube against the drag of each varied geometry itself.
#include "core/eddy/drop_model.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

DropInputs tube(double bore_radius_m, double wall_m, double limit_m) {
    DropInputs i;
    i.outer_radius_m = {7.5e-3, 0, true};
    i.length_m = {15e-3, 0, true};
    i.bore_radius_m = {bore_radius_m, limit_m, true};
    i.outside_radius_m = {bore_radius_m + wall_m, limit_m, true};
    i.tube_length_m = {0.4, 0, true};
    i.remanence_T = {1.3, 0, true};
    i.density_kg_m3 = {7500, 0, true};
    return i;
}

struct Worst {
    double error = 0, change = 0; // of the samples' drag, where a wall is left
};

Worst worst_of(const DropInputs& nominal) {
    const DropModel model(nominal);
    Draws draws(300, 5);
    const auto variations = model.variations(draws);
    const double whole = TubeDrag(nominal.magnet(), nominal.bore()).coefficient_N_s_m(1, 1);
    Worst worst;
    for (std::size_t s = 0; s < variations.size(); ++s) {
        DropInputs own = nominal;
        own.bore_radius_m.value = nominal.bore_radius_m.at(draws.of("tube.bore")[s]);
        own.outside_radius_m.value = nominal.outside_radius_m.at(draws.of("tube.outside")[s]);
        const double wall = own.outside_radius_m.value - own.bore_radius_m.value;
        if (wall < 1e-7) {
            CHECK(variations[s].drag < 0.2);
            continue;
        }
        const double exact = TubeDrag(own.magnet(), own.bore()).coefficient_N_s_m(1, 1) / whole;
        worst.error = std::max(worst.error, std::abs(variations[s].drag / exact - 1));
        worst.change = std::max(worst.change, std::abs(exact - 1));
    }
    return worst;
}

} // namespace

TEST_CASE("samples of a wall's limits have the drag of their own geometry, to the second order", "[eddy]") {
    for (const double wall_m : {3e-3, 1e-3, 0.3e-3}) {
        const Worst worst = worst_of(tube(9e-3, wall_m, 0.05e-3));
        INFO(wall_m << ": error " << worst.error << " where the drag changes by " << worst.change);
        CHECK(worst.change > 0.03);
        CHECK(worst.error < worst.change * worst.change / 2); // as the header says
    }
}

TEST_CASE("a wall that is known no better than itself brakes by its own thickness, or not at all", "[eddy]") {
    for (const double wall_m : {20e-6, 5e-6, 1e-6}) {
        const Worst worst = worst_of(tube(9e-3, wall_m, 0.02e-3));
        INFO(wall_m << ": error " << worst.error);
        CHECK(worst.error < 0.05);
    }
}

// Benchmark, not a test: time of one drag evaluation, of a curve and of a thousand falls. Built and run by
// bench_drag.sh.
#include "core/eddy/fall_times.hpp"

#include <cmath>
#include <cstdio>
#include <ctime>

using namespace pourbook;
using namespace pourbook::eddy;

namespace {

/// Processor time, which other people's work on the machine does not lengthen.
double now_s() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

} // namespace

int main() {
    DropInputs i;
    i.outer_radius_m = {6e-3, 0.025e-3, true};
    i.length_m = {10e-3, 0.05e-3, true};
    i.bore_radius_m = {6.5e-3, 0.025e-3, true};
    i.outside_radius_m = {7.5e-3, 0.025e-3, true};
    i.tube_length_m = {1, 0.5e-3, true};
    i.remanence_T = {1.3, 0.02, true};
    i.density_kg_m3 = {7500, 100, true};
    const TubeDrag drag(i.magnet(), i.bore());
    constexpr int turns = 1000;
    double start = now_s(), sum = 0;
    for (int k = 0; k < turns; ++k) sum += drag.force(0.01 + 0.02 * k);
    const double one = (now_s() - start) / turns;
    start = now_s();
    const DropModel model(i);
    const double build = now_s() - start;
    start = now_s();
    for (int k = 0; k < 100 * turns; ++k) sum += model.curve().force(0.01 + 0.02 * k);
    const double look_up = (now_s() - start) / (100.0 * turns);
    Draws draws(1000, 1);
    const auto variations = model.variations(draws);
    start = now_s();
    constexpr int metals = 130;
    for (int m = 0; m < metals; ++m) {
        std::vector<double> conductivities;
        for (double z : draws.of("metal")) conductivities.push_back(0.45e6 * (m + 1) * std::exp(0.03 * z));
        sum += fall_times_s(model, conductivities, variations).front();
    }
    const double all = now_s() - start;
    std::printf(
        "| one drag evaluation (the integral) | %.3g ms |\n| one drag from the universal curve | %.3g us |\n"
        "| set-up with curve, ends and sensitivities | %.3g ms |\n| 1000 falls in each of %d metals | %.3g s |\n",
        1e3 * one, 1e6 * look_up, 1e3 * build, metals, all);
    return sum > 0 ? 0 : 1;
}

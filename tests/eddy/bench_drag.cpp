// Benchmark, not a test: time of one drag evaluation, of a curve, and of ranking every metal of the database by its
// fall time with a thousand samples each. Built and run by bench_drag.sh; argument: the reference database.
#include "core/eddy/fall_times.hpp"
#include "db/store/reference_file.hpp"
#include "questions/drop/tube_metal.hpp"

#include <algorithm>
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

/// Every metal that makes a tube at 20 degC, by its median fall time; returns how many.
std::size_t rank_all(const Catalogue& catalogue, const DropInputs& inputs) {
    constexpr std::size_t samples = 1000;
    const DropModel model(inputs);
    Draws draws(samples, 1);
    const auto variations = model.variations(draws);
    std::vector<std::pair<double, const Metal*>> order;
    for (const Metal& metal : catalogue.metals) {
        const auto tube = tube_metal(catalogue, metal, {});
        if (!tube) continue; // ferromagnetic, molten, no resistivity
        auto times = fall_times_s(model, tube->conductivities(draws), variations);
        order.emplace_back(quantile(times, 0.5), &metal);
    }
    std::sort(order.rbegin(), order.rend());
    return order.size();
}

/// One fall with its path and its interval from 1000 samples, everything made anew.
double one_fall_s(const DropInputs& inputs, double conductivity_S_m) {
    const double start = now_s();
    const DropModel model(inputs);
    model.fall(model.setup(conductivity_S_m), true);
    Draws draws(1000, 1);
    const auto variations = model.variations(draws);
    auto times = fall_times_s(model, std::vector<double>(draws.samples(), conductivity_S_m), variations);
    quantile(times, 0.05);
    return now_s() - start;
}

} // namespace

int main(int count, char** arguments) {
    if (count != 2) return 2;
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
    DropInputs cold = i, lined = i, brief = i;
    cold.tube_length_m.value = brief.tube_length_m.value = 0.1;
    lined.wall = {{i.bore(), 0, 1}, {{7.5e-3, 8.5e-3}, 0, 1, 0.6, 1}};
    brief.wall = {{i.bore(), 0, 0.1}, {{7.5e-3, 8.5e-3}, 0, 0.1, 0.6, 1}};
    const double fall = one_fall_s(i, 58e6), followed = one_fall_s(cold, 480e6), sleeve = one_fall_s(lined, 58e6),
                 both = one_fall_s(brief, 480e6);
    const Catalogue catalogue = read_reference(arguments[1]);
    start = now_s();
    const std::size_t ranked = rank_all(catalogue, i);
    const double all = now_s() - start;
    std::printf("| one drag evaluation (the integral) | %.3g ms |\n| one drag from the universal curve | %.3g us |\n"
                "| set-up with curve, ends and sensitivities | %.3g ms |\n"
                "| one fall with its interval from 1000 samples, set-up included | %.3g ms |\n"
                "| the same in 100 mm of copper at 77 K, the currents followed in time | %.3g ms |\n"
                "| one fall with its interval through a tube with a sleeve | %.3g ms |\n"
                "| the same in 100 mm at 77 K, the currents followed in time | %.3g ms |\n"
                "| all %zu metals of the database ranked by fall time, 1000 samples each, set-up included | %.3g s |\n",
                1e3 * one, 1e6 * look_up, 1e3 * build, 1e3 * fall, 1e3 * followed, 1e3 * sleeve, 1e3 * both, ranked,
                all);
    return sum > 0 ? 0 : 1;
}

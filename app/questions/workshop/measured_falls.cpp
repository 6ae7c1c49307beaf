#include "questions/workshop/measured_falls.hpp"

#include "questions/metals/find_metal.hpp"
#include "questions/workshop/trial.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double same_relative = 1e-6; // sizes written in another unit
constexpr double same_K = 5;

bool same(const eddy::Uncertain& a, const eddy::Uncertain& b) {
    return std::abs(a.value - b.value) <= same_relative * std::abs(a.value);
}

bool same(const DropSetup& a, const DropSetup& b) {
    using eddy::DropInputs;
    if (a.inputs.shape != b.inputs.shape) return false;
    for (const auto part :
         {&DropInputs::outer_radius_m, &DropInputs::inner_radius_m, &DropInputs::length_m, &DropInputs::bore_radius_m,
          &DropInputs::outside_radius_m, &DropInputs::tube_length_m, &DropInputs::remanence_T})
        if (!same(a.inputs.*part, b.inputs.*part)) return false;
    return std::abs(a.magnet_temperature_K - b.magnet_temperature_K) <= same_K;
}

} // namespace

Result<MeasuredFalls> measured_falls(const Catalogue& catalogue, const std::vector<Trial>& trials,
                                     const SetupWords& words, const Conditions& conditions) {
    const Result<DropSetup> setup = drop_setup(catalogue, words);
    if (!setup) return setup.problem();
    MeasuredFalls out;
    if (setup->inputs.slits.count != 0 || setup->inputs.off_axis_m != 0) return out;
    for (const Trial& trial : trials) {
        if (trial.type != TrialType::drop) continue;
        if (std::abs(trial.temperature_K.value_or(room_temperature_K) - conditions.temperature_K) > same_K) continue;
        const Result<const Metal*> metal = find_metal(catalogue, trial.metal);
        const Result<DropSetup> made = drop_setup(catalogue, setup_of(trial));
        if (!metal || !made || !same(*setup, *made)) continue;
        const std::vector<double> times = times_of(trial);
        std::vector<double>& of_metal = out[(*metal)->slug];
        of_metal.insert(of_metal.end(), times.begin(), times.end());
    }
    return out;
}

} // namespace pourbook

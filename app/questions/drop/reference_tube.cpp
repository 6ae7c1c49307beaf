#include "questions/drop/reference_tube.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double known_to = 0.01, one_timing_by_hand_s = 0.15; // where nothing is stated

Result<eddy::Uncertain> known_resistivity(const InferRequest& r, std::vector<std::string>& assumptions) {
    const std::string option = "--reference-resistivity";
    if (r.reference_resistivity.empty())
        return unreadable("--reference-tube needs " + option + ", such as 58MS/m or 101%IACS");
    Result<eddy::Uncertain> known = uncertain_from(r.reference_resistivity, parse_unit("ohm.m")->dimension, option);
    if (!known) return known;
    if (!(known->value > 0))
        return unreadable(option + " '" + r.reference_resistivity + "': a value above zero is expected");
    if (known->spread > 0) return known;
    assumptions.push_back("reference tube's conductivity given without a tolerance: 1 % assumed");
    return eddy::Uncertain{known->value, known_to * known->value, false};
}

} // namespace

Result<Calibration> calibration_of(const Catalogue& catalogue, const InferRequest& request) {
    Calibration out;
    if (request.reference_times_s.empty())
        return unreadable("--reference-tube needs --reference-time, the falls of the same magnet through it");
    const Result<eddy::Uncertain> known = known_resistivity(request, out.assumptions);
    if (!known) return known.problem();
    SetupWords words = request.setup;
    words.tube = request.reference_tube;
    const Result<DropSetup> setup = drop_setup(catalogue, words);
    if (!setup) return setup.problem();
    Draws draws(request.samples, request.seed);
    for (const char* own : {"tube.", "drops.", "drop."}) draws.set_apart(own);
    const eddy::DropModel model(setup->inputs);
    eddy::TimedDrops drops{request.reference_times_s, request.time_reading_s};
    if (drops.reading_s == 0 && drops.times_s.size() == 1) drops.reading_s = one_timing_by_hand_s;
    const Result<eddy::Conductivity> fell = eddy::conductivity_from_times(model, drops, model.variations(draws), draws);
    if (!fell) return fell.problem();
    out.factor = 1 / (known->value * fell->value_S_m);
    const std::vector<double>& z = draws.of("reference.resistivity");
    for (std::size_t i = 0; i < z.size(); ++i) out.factors.push_back(1 / (known->at(z[i]) * fell->samples_S_m[i]));
    out.assumptions.push_back("the reference tube says: the magnet's moment is " +
                              significant(100 / std::sqrt(out.factor), 3) + " % of what is stated");
    return out;
}

} // namespace pourbook

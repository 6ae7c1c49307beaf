#include "questions/workshop/own_trials.hpp"

#include "core/evaluate/evaluate.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/workshop/trial.hpp"

#include <algorithm>
#include <map>

namespace pourbook {
namespace {

constexpr std::size_t newest_of_a_metal = 12, few_samples = 100;

/// Factor that takes a conductivity from the trial's temperature to 20 degC; none where the curve is not known.
std::optional<double> to_room(const Catalogue& catalogue, const Metal& metal, double temperature_K) {
    Conditions there, room;
    there.temperature_K = temperature_K;
    there.story = room.story = false;
    const Result<Evaluated> t = evaluate(catalogue, metal, "resistivity", there),
                            r = evaluate(catalogue, metal, "resistivity", room);
    return t && r ? std::optional(t->value_si / r->value_si) : std::nullopt;
}

std::optional<OwnCasting> casting_of(const Catalogue& catalogue, const Metal& metal, const Trial& trial) {
    const Result<TrialResult> result = show_trial(catalogue, trial, few_samples);
    if (!result || !result->inferred) return std::nullopt;
    const auto factor = to_room(catalogue, metal, trial.temperature_K.value_or(room_temperature_K));
    if (!factor) return std::nullopt;
    const eddy::Conductivity& measured = result->inferred->conductivity;
    OwnCasting out{metal.slug, measured.value_S_m * *factor, measured.standard_uncertainty_S_m / measured.value_S_m};
    if (trial.type != TrialType::drop) return out;
    out.shared = trial.magnet + "|" + trial.grade + trial.br + trial.surface_field;
    const eddy::Uncertain& br = result->inferred->setup.inputs.remanence_T;
    out.shared_relative = std::min(out.relative, 2 * br.standard() / br.value); // drag goes with its square
    return out;
}

} // namespace

std::vector<OwnCasting> castings_of_trials(const Catalogue& catalogue, const std::vector<Trial>& trials) {
    std::vector<OwnCasting> out;
    std::map<std::string, std::size_t> taken;
    for (auto trial = trials.rbegin(); trial != trials.rend(); ++trial) {
        const bool electrical = trial->type == TrialType::drop || trial->type == TrialType::four_wire;
        const bool of_casting = trial->condition.empty() || trial->condition == "as-cast";
        if (!electrical || !of_casting || trial->metal.empty()) continue;
        const Result<const Metal*> metal = find_metal(catalogue, trial->metal);
        if (!metal || taken[(*metal)->slug] == newest_of_a_metal) continue;
        const auto casting = casting_of(catalogue, **metal, *trial);
        if (!casting) continue;
        ++taken[(*metal)->slug];
        out.push_back(*casting);
    }
    return out;
}

} // namespace pourbook

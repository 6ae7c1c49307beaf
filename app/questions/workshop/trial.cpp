#include "questions/workshop/trial.hpp"

#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

class Show {
public:
    Show(const Catalogue& catalogue, const Trial& trial, std::size_t samples)
        : catalogue_(catalogue), t_(trial), samples_(samples) {
        out_.trial = trial;
    }

    Result<TrialResult> run() {
        if (t_.type == TrialType::drop || t_.type == TrialType::four_wire) {
            Result<InferResult> inferred = inferred_from(catalogue_, t_, samples_);
            if (!inferred) return inferred.problem();
            out_.inferred = std::move(*inferred);
        } else {
            Result<Weighed> weighed = weighed_from(catalogue_, t_, out_.remarks);
            if (!weighed) return weighed.problem();
            out_.weighed = std::move(*weighed);
        }
        if (t_.type == TrialType::drop) predict();
        return std::move(out_);
    }

private:
    void predict() {
        const std::vector<double> times = times_of(t_);
        out_.measured_time_s = std::accumulate(times.begin(), times.end(), 0.0) / static_cast<double>(times.size());
        if (t_.metal.empty()) {
            out_.remarks.push_back("no predicted time: the trial names no metal");
            return;
        }
        DropRequest request;
        request.setup = setup_of(t_);
        request.metal = t_.metal;
        request.conditions = conditions_of(t_);
        request.samples = samples_;
        Result<DropResult> predicted = drop(catalogue_, request);
        if (predicted)
            out_.predicted = std::move(*predicted);
        else
            out_.remarks.push_back("no predicted time: " + predicted.problem().text);
    }

    const Catalogue& catalogue_;
    const Trial& t_;
    std::size_t samples_;
    TrialResult out_;
};

} // namespace

SetupWords setup_of(const Trial& t) {
    return {t.magnet, t.grade, t.br, t.surface_field, t.recoil_permeability, t.magnet_mass, t.magnet_at, t.tube};
}

std::vector<double> times_of(const Trial& trial) {
    std::vector<double> times = trial.times_s;
    for (const double count : trial.frames) times.push_back(count / trial.frame_rate_per_s.value_or(no_number));
    return times;
}

Conditions conditions_of(const Trial& trial) {
    Conditions c;
    if (trial.temperature_K) c.temperature_K = *trial.temperature_K;
    if (!trial.condition.empty() && trial.condition != "as-cast") {
        c.condition = trial.condition;
        return c;
    }
    c.casting.emplace();
    c.casting->own_trials = false; // what a trial taught is no check on itself
    return c;
}

Result<InferResult> inferred_from(const Catalogue& catalogue, const Trial& t, std::size_t samples) {
    InferRequest request;
    request.setup = setup_of(t);
    request.times_s = times_of(t);
    if (t.time_uncertainty_s) request.time_reading_s = *t.time_uncertainty_s;
    if (!t.frames.empty()) request.time_reading_s = 1 / (*t.frame_rate_per_s * std::sqrt(6.0));
    request.resistance = t.resistance;
    request.span = t.span;
    request.tube_mass = t.mass;
    request.conditions = conditions_of(t);
    request.samples = samples;
    return infer(catalogue, request);
}

Result<TrialResult> show_trial(const Catalogue& catalogue, const Trial& trial, std::size_t samples) {
    return Show(catalogue, trial, samples).run();
}

} // namespace pourbook

#include "questions/workshop/own_trials.hpp"

#include "core/casting/practice.hpp"
#include "core/evaluate/evaluate.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/workshop/own_metal.hpp"
#include "questions/workshop/trial.hpp"

#include <algorithm>
#include <cmath>
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
    const Result<InferResult> inferred = inferred_from(catalogue, trial, few_samples);
    if (!inferred) return std::nullopt;
    const auto factor = to_room(catalogue, metal, trial.temperature_K.value_or(room_temperature_K));
    if (!factor) return std::nullopt;
    const eddy::Conductivity& measured = inferred->conductivity;
    OwnCasting out{metal.slug, measured.value_S_m * *factor, measured.standard_uncertainty_S_m / measured.value_S_m};
    if (trial.type != TrialType::drop) return out;
    out.shared = trial.magnet + "|" + trial.grade + trial.br + trial.surface_field;
    const eddy::Uncertain& br = inferred->setup.inputs.remanence_T;
    out.shared_relative = std::min(out.relative, 2 * br.standard() / br.value); // drag goes with its square
    return out;
}

constexpr double half_over_deviation = 1.7320508075688772; // half width over standard deviation of an even spread
constexpr double questioned = 2, most_porous = 0.3;

struct WeighedPores {
    double share = 0, uncertainty = 0;
};

std::optional<WeighedPores> pores_of(const Catalogue& catalogue, const Trial& trial) {
    std::vector<std::string> remarks;
    const Result<Weighed> weighed = weighed_from(catalogue, trial, remarks);
    if (!weighed || !weighed->porosity) return std::nullopt;
    const WeighedPores out{*weighed->porosity, weighed->porosity_uncertainty};
    if (out.share < -questioned * out.uncertainty || out.share > most_porous) return std::nullopt;
    return out;
}

std::optional<Practice> next_pores(const Catalogue& catalogue, const Metal& metal,
                                   const std::vector<WeighedPores>& weighed) {
    const auto common = casting::practices(catalogue, metal, "casting_porosity", "");
    const auto between = casting::range_of(casting::practices(catalogue, metal, "porosity_scatter", ""));
    if (common.empty() || between.empty()) return std::nullopt;
    const Point& range = common.front()->figure;
    const double spread = (range.high_si - range.low_si) / 2 / half_over_deviation, scatter = between.middle();
    double weight = 1 / std::max(spread * spread - scatter * scatter, spread * spread / 4);
    double sum = weight * (range.low_si + range.high_si) / 2;
    for (const WeighedPores& p : weighed) {
        const double w = 1 / (p.uncertainty * p.uncertainty + scatter * scatter);
        weight += w;
        sum += w * p.share;
    }
    const double half = half_over_deviation * std::sqrt(1 / weight + scatter * scatter),
                 mean = std::max(0.0, sum / weight);
    Practice out;
    out.quantity = "own_porosity";
    out.metal = metal.slug;
    out.figure.value_si = mean;
    out.figure.low_si = std::max(0.0, mean - half);
    out.figure.high_si = std::min(mean + half, most_porous);
    out.citation.source = own_values_key;
    out.citation.locator = "your " + std::to_string(weighed.size()) + (weighed.size() > 1 ? " weighings" : " weighing");
    out.citation.how_known = HowKnown::own;
    return out;
}

bool is_of_casting(const Trial& trial) {
    return trial.condition.empty() || trial.condition == "as-cast";
}

} // namespace

std::vector<Practice> porosities_of_trials(const Catalogue& catalogue, const std::vector<Trial>& trials) {
    std::map<std::string, std::vector<WeighedPores>> of;
    for (auto trial = trials.rbegin(); trial != trials.rend(); ++trial) {
        const bool weighed = trial->type == TrialType::weighing || trial->type == TrialType::casting;
        if (!weighed || !is_of_casting(*trial) || trial->metal.empty()) continue;
        const Result<const Metal*> metal = find_metal(catalogue, trial->metal);
        if (!metal || of[(*metal)->slug].size() == newest_of_a_metal) continue;
        if (const auto pores = pores_of(catalogue, *trial)) of[(*metal)->slug].push_back(*pores);
    }
    std::vector<Practice> out;
    for (const auto& [slug, weighed] : of)
        if (!weighed.empty())
            if (auto entry = next_pores(catalogue, *catalogue.metal(slug), weighed)) out.push_back(std::move(*entry));
    return out;
}

std::vector<OwnCasting> castings_of_trials(const Catalogue& catalogue, const std::vector<Trial>& trials) {
    std::vector<OwnCasting> out;
    std::map<std::string, std::size_t> taken;
    for (auto trial = trials.rbegin(); trial != trials.rend(); ++trial) {
        const bool electrical = trial->type == TrialType::drop || trial->type == TrialType::four_wire;
        if (!electrical || !is_of_casting(*trial) || trial->metal.empty()) continue;
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

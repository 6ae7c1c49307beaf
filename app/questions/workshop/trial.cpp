#include "questions/workshop/trial.hpp"

#include "core/casting/contraction.hpp"
#include "core/quantity/unit.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/pour/part_words.hpp"

#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

constexpr double mass_relative = 0.005, size_half_m = 0.1e-3; // see the header
constexpr double impossible = 2;                              // standard uncertainties below no porosity at all

/// Relative standard uncertainty of the volume, each size even within its half width.
double volume_doubt(const casting::Shape& shape, double volume_m3) {
    double variance = 0;
    for (std::size_t i = 0; i < casting::size_names(shape.form).size(); ++i) {
        casting::Shape larger = shape;
        larger.size_m[i] += size_half_m;
        const Result<casting::Solid> changed = casting::measured(larger);
        if (!changed) continue; // a wall thinner than that
        variance += std::pow((changed->volume_m3 / volume_m3 - 1) / std::sqrt(3.0), 2);
    }
    return std::sqrt(variance);
}

class Show {
public:
    Show(const Catalogue& catalogue, const Trial& trial, std::size_t samples)
        : catalogue_(catalogue), t_(trial), samples_(samples) {
        out_.trial = trial;
        if (t_.temperature_K) conditions_.temperature_K = *t_.temperature_K;
        if (!t_.condition.empty()) conditions_.condition = t_.condition;
    }

    Result<TrialResult> run() {
        const bool electrical = t_.type == TrialType::drop || t_.type == TrialType::four_wire;
        const Result<bool> done = electrical ? conductivity() : weighing();
        if (!done) return done.problem();
        if (t_.type == TrialType::drop) predict();
        return std::move(out_);
    }

private:
    Result<bool> conductivity() {
        InferRequest request;
        request.setup = setup_of(t_);
        request.times_s = times_of(t_);
        if (t_.time_uncertainty_s) request.time_reading_s = *t_.time_uncertainty_s;
        if (!t_.frames.empty()) request.time_reading_s = 1 / (*t_.frame_rate_per_s * std::sqrt(6.0));
        request.resistance = t_.resistance;
        request.span = t_.span;
        request.tube_mass = t_.mass;
        request.conditions = conditions_;
        request.samples = samples_;
        Result<InferResult> inferred = infer(catalogue_, request);
        if (!inferred) return inferred.problem();
        out_.inferred = std::move(*inferred);
        return true;
    }

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
        request.conditions = conditions_;
        request.samples = samples_;
        Result<DropResult> predicted = drop(catalogue_, request);
        if (predicted)
            out_.predicted = std::move(*predicted);
        else
            out_.remarks.push_back("no predicted time: " + predicted.problem().text);
    }

    Result<bool> weighing() {
        const Result<PartWords> part = part_from(t_.part);
        if (!part) return part.problem();
        const Result<casting::Solid> solid = casting::measured(*part->shape);
        if (!solid) return solid.problem();
        const Result<double> mass = parse_si(t_.mass, base_dimension(Dimension::kilogram), "mass");
        if (!mass) return mass.problem();
        Weighed w;
        w.mass_kg = *mass;
        w.volume_m3 = solid->volume_m3;
        w.density_kg_m3 = w.mass_kg / w.volume_m3;
        w.density_uncertainty = w.density_kg_m3 * std::hypot(mass_relative, volume_doubt(*part->shape, w.volume_m3));
        compare_density(w);
        contraction(w, *part->shape);
        out_.weighed = std::move(w);
        return true;
    }

    const Metal* metal() {
        const Result<const Metal*> found = find_metal(catalogue_, t_.metal);
        if (!found) out_.remarks.push_back("nothing to compare with: the trial names no metal");
        return found ? *found : nullptr;
    }

    void compare_density(Weighed& w) {
        const Metal* m = metal();
        if (!m) return;
        const Result<Evaluated> expected = evaluate(catalogue_, *m, "density", conditions_);
        if (!expected) {
            out_.remarks.push_back("no porosity: " + expected.problem().text);
            return;
        }
        w.expected_density = *expected;
        w.porosity = 1 - w.density_kg_m3 / expected->value_si;
        w.porosity_uncertainty = (1 - *w.porosity) * std::hypot(w.density_uncertainty / w.density_kg_m3,
                                                                expected->standard_uncertainty_si / expected->value_si);
        if (*w.porosity < -impossible * w.porosity_uncertainty)
            out_.remarks.push_back("denser than " + m->slug +
                                   " can be: check the sizes, the mass and the metal; no pore is negative");
        if (const Result<casting::Contraction> free = casting::free_contraction({catalogue_, *m, conditions_}))
            w.predicted_contraction = free->strain.value_si;
    }

    void contraction(Weighed& w, const casting::Shape& part) {
        if (t_.pattern.empty()) return;
        const Result<PartWords> pattern = part_from(t_.pattern);
        if (!pattern || !pattern->shape || pattern->shape->form != part.form) return; // refused when it was entered
        const std::vector<std::string> names = casting::size_names(part.form);
        for (std::size_t i = 0; i < names.size(); ++i)
            w.contraction.push_back({names[i], pattern->shape->size_m[i] / part.size_m[i] - 1});
    }

    const Catalogue& catalogue_;
    const Trial& t_;
    std::size_t samples_;
    Conditions conditions_;
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

Result<TrialResult> show_trial(const Catalogue& catalogue, const Trial& trial, std::size_t samples) {
    return Show(catalogue, trial, samples).run();
}

} // namespace pourbook

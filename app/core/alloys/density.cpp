#include "core/alloys/density.hpp"

#include "core/alloys/error_table.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// Volumes of 100 kg, summed element by element.
class Volumes {
public:
    explicit Volumes(const AlloySetting& setting) : setting_(setting) {}

    std::optional<Problem> add(const std::string& element, double wt) {
        const double rho = density(element);
        if (!std::isnan(rho)) {
            volume_ += wt / rho;
            mass_ += wt;
            return std::nullopt;
        }
        if (wt >= traces_wt) return Problem{Problem::Kind::no_value, "no density of " + element + " is cited", 0};
        estimate_.trail.push_back(element + ": no density is cited; left out");
        return std::nullopt;
    }

    /// A solute that takes the place of host atoms.
    std::optional<Problem> add_dissolved(const std::string& host, const SoluteState& s) {
        const VolumeEffect* effect = setting_.data().volume(host, s.element);
        const double host_density = density(host);
        if (!effect || std::isnan(host_density)) return add(s.element, s.dissolved_wt);
        const double host_atom = setting_.data().mass(host)->g_per_mol / host_density;
        volume_ +=
            s.dissolved_wt / setting_.data().mass(s.element)->g_per_mol * host_atom * (1 + effect->percent / 100);
        mass_ += s.dissolved_wt;
        cite(estimate_, effect->citation);
        with_effect_ = true;
        return std::nullopt;
    }

    Estimate finished() {
        estimate_.value_si = mass_ / volume_;
        estimate_.rule = with_effect_ ? "specific volumes, with the published volume effect of what is dissolved"
                                      : "specific volumes of the elements";
        estimate_.range = "sound metal without pores";
        set_error(estimate_, with_effect_ ? ErrorClass::density_dissolved : ErrorClass::density_elements);
        return std::move(estimate_);
    }

    void note(const std::vector<Citation>& sources) {
        for (const Citation& c : sources) cite(estimate_, c);
    }

private:
    double density(const std::string& element) {
        const Result<double> value = pure_value(setting_.catalogue, element, "density", estimate_);
        return value ? *value : no_number;
    }

    const AlloySetting& setting_;
    Estimate estimate_;
    double volume_ = 0, mass_ = 0;
    bool with_effect_ = false;
};

} // namespace

Result<Estimate> estimate_density(const AlloySetting& setting) {
    Volumes volumes(setting);
    const Result<SolidState> state = solid_state(setting);
    if (!state) { // nothing is known of what dissolves: every element with its own volume
        for (const Share& s : setting.composition.shares())
            if (const auto fault = volumes.add(s.element, s.wt_percent)) return *fault;
        return volumes.finished();
    }
    volumes.note(state->sources);
    if (const auto fault = volumes.add(state->host, state->host_wt)) return *fault;
    for (const SoluteState& s : state->solutes) {
        if (s.dissolved_wt > 0)
            if (const auto fault = volumes.add_dissolved(state->host, s)) return *fault;
        if (s.out_wt > 0)
            if (const auto fault = volumes.add(s.element, s.out_wt)) return *fault;
    }
    return volumes.finished();
}

} // namespace pourbook

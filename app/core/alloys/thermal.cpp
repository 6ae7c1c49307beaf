#include "core/alloys/thermal.hpp"

#include "core/alloys/impurity.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr double lattice_doubt = 0.5, lorenz_doubt = 0.05, slope_doubt = 0.10;

struct Lorenz {
    double number, lattice_si;
    const char* whose;
};

Lorenz lorenz_of(const std::string& host) {
    if (host == "Cu") return {2.39e-8, 7.5, "Smith and Palmer 1935"};
    if (host == "Al") return {2.10e-8, 12.6, "Bungardt and Kallenbach 1950"};
    return {2.443e-8, 5, "Sommerfeld's number"};
}

void set_relative(Estimate& e, double relative) {
    e.standard_uncertainty_si = relative * e.value_si;
    e.low90_si = e.value_si * (1 - 1.645 * relative);
    e.high90_si = e.value_si * (1 + 1.645 * relative);
}

} // namespace

Result<Estimate> estimate_temperature_coefficient(const Catalogue& catalogue, const ResistivityEstimate& r) {
    const double added = r.estimate.value_si - r.host_si;
    if (added > most_dilute_si || r.second_share > second_phase_matters)
        return Problem{Problem::Kind::out_of_range,
                       "no rule: Matthiessen's rule holds for dilute alloys (at most 1.5 uohm.cm added, one phase)", 0};
    Conditions cool, warm;
    cool.temperature_K = room_temperature_K - 10;
    warm.temperature_K = room_temperature_K + 10;
    const Metal* metal = catalogue.element(r.state.host);
    const Result<Evaluated> low = evaluate(catalogue, *metal, "resistivity", cool);
    const Result<Evaluated> high = evaluate(catalogue, *metal, "resistivity", warm);
    if (!low) return low.problem();
    if (!high) return high.problem();
    Estimate e;
    e.value_si = (high->value_si - low->value_si) / 20 / r.estimate.value_si;
    e.rule = "Matthiessen: the pure metal's slope over the alloy's resistivity";
    e.range = "at most 1.5 uohm.cm added, near 20 degC";
    e.error = "slope taken to 10 %";
    e.sources = r.estimate.sources;
    set_relative(e, std::hypot(slope_doubt, r.estimate.standard_uncertainty_si / r.estimate.value_si));
    return e;
}

Result<Estimate> estimate_thermal_conductivity(const ResistivityEstimate& r) {
    constexpr std::array semimetals = {"Bi", "Sb", "Si", "Ge"};
    if (std::find(semimetals.begin(), semimetals.end(), r.state.host) != semimetals.end())
        return Problem{Problem::Kind::refused, "no rule: Wiedemann and Franz's law does not hold for " + r.state.host,
                       0};
    const Lorenz l = lorenz_of(r.state.host);
    const double electrons = l.number * room_temperature_K / r.estimate.value_si;
    Estimate e;
    e.value_si = electrons + l.lattice_si;
    e.rule = "Wiedemann-Franz with a lattice part of " + trimmed(l.lattice_si, 3) + " W/(m K), " + l.whose;
    e.range = "metals near 20 degC";
    e.error = "electron part to 5 %, lattice part to half, beside the resistivity's own error";
    e.sources = r.estimate.sources;
    const double u =
        std::hypot(electrons * std::hypot(lorenz_doubt, r.estimate.standard_uncertainty_si / r.estimate.value_si),
                   lattice_doubt * l.lattice_si);
    set_relative(e, u / e.value_si);
    return e;
}

} // namespace pourbook

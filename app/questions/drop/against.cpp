#include "questions/drop/against.hpp"

#include "core/eddy/fall_times.hpp"
#include "core/quantity/format.hpp"
#include "core/ranking/order.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double thinnest = 0.01, thickest = 200; // walls tried, in bore radii

bool same_magnet(SetupWords a, const SetupWords& b) {
    a.magnet_at = b.magnet_at; // the same magnet at another temperature
    a.tube = b.tube;
    a.slits = b.slits;
    a.off_axis = b.off_axis;
    a.release = b.release;
    a.stop = b.stop;
    return a == b;
}

/// Draws of the second set-up: what it shares with the first moves with it.
Draws second_draws(const AgainstRequest& r) {
    Draws draws(r.first.samples, r.first.seed);
    const bool same_metal = r.first.metal == r.second.metal && r.first.resistivity == r.second.resistivity;
    if (!same_magnet(r.first.setup, r.second.setup)) draws.set_apart("magnet.");
    if (!same_metal || r.first.setup.tube != r.second.setup.tube)
        for (const char* own : {"tube.bore", "tube.outside", "tube.length"}) draws.set_apart(own);
    if (!same_metal) draws.set_apart("tube.resistivity");
    if (!same_metal || r.first.setup != r.second.setup) draws.set_apart("drop."); // each rides off the axis by itself
    return draws;
}

std::vector<double> times_of(const DropResult& r, Draws draws) {
    const auto variations = r.model->variations(draws);
    return eddy::fall_times_s(*r.model, drawn_conductivities(r, draws), variations);
}

void compare(AgainstResult& r, const AgainstRequest& request) {
    const auto a = times_of(r.first, Draws(request.first.samples, request.first.seed)),
               b = times_of(r.second, second_draws(request));
    std::vector<double> ratios;
    for (std::size_t i = 0; i < a.size(); ++i) ratios.push_back(b[i] / a[i]);
    r.second_longer = quantile(ratios, 0.5) > 1;
    double wins = 0;
    for (double& ratio : ratios) {
        if (!r.second_longer) ratio = 1 / ratio;
        wins += ratio > 1 ? 1 : ratio == 1 ? 0.5 : 0;
    }
    r.p_longer = wins / static_cast<double>(ratios.size());
    r.ratio_median = quantile(ratios, 0.5);
    r.ratio_low90 = quantile(ratios, 0.05);
    r.ratio_high90 = quantile(ratios, 0.95);
    r.tie = r.p_longer < told_apart;
}

double time_with_wall(const DropResult& r, double wall_m) {
    eddy::DropInputs whole = r.setup.inputs;
    whole.outside_radius_m.value = whole.bore_radius_m.value + wall_m;
    whole.slits = {};
    whole.off_axis_m = 0;
    const eddy::DropModel model(whole);
    return model.fall(model.setup(r.tube.conductivity_S_m())).time_s;
}

/// The fall takes longer the thicker the wall, as long as the magnet falls below the peak of the drag.
std::optional<double> equal_wall(const AgainstResult& r) {
    if (r.second.model->wall()) return std::nullopt; // of which of its parts?
    const double wanted = r.first.fall.time_s, a = r.second.setup.inputs.bore_radius_m.value;
    double low = std::log(thinnest), high = std::log(thickest);
    const auto time_at = [&](double ln_wall) { return time_with_wall(r.second, a * std::exp(ln_wall)); };
    if (time_at(high) < wanted || time_at(low) > wanted) return std::nullopt;
    constexpr int turns = 16;
    for (int i = 0; i < turns; ++i) {
        const double middle = (low + high) / 2;
        (time_at(middle) < wanted ? low : high) = middle;
    }
    return a * std::exp((low + high) / 2);
}

std::string millimetres(double m) {
    return trimmed(m * 1000, 3) + " mm";
}

double wall_of(const DropResult& r) {
    return r.setup.inputs.outside_radius_m.value - r.setup.inputs.bore_radius_m.value;
}

std::string metal_of(const DropResult& r) {
    return r.tube.metal ? r.tube.metal->name : "metal of " + trimmed(r.tube.resistivity_si * 1e8, 4) + " µΩ·cm";
}

std::string seconds(double s, double low, double high) {
    return rounded_to(s, (high - low) / 4, 3) + " s";
}

std::string chance(double p) {
    return p > 0.999 ? "more than 99.9 %" : trimmed(100 * p, p > 0.99 ? 3 : 2) + " %";
}

std::string weights(const Catalogue& catalogue, const DropResult& a, const DropResult& b) {
    std::string text;
    if (std::isfinite(a.tube_mass_kg) && std::isfinite(b.tube_mass_kg))
        text += " The tubes weigh " + significant(a.tube_mass_kg * 1000, 3) + " g and " +
                significant(b.tube_mass_kg * 1000, 3) + " g";
    if (!text.empty() && std::isfinite(a.cost_usd) && std::isfinite(b.cost_usd))
        text += ", their metal costs " + shown_money(catalogue, a.cost_usd, 2, UnitSystem::shown) + " and " +
                shown_money(catalogue, b.cost_usd, 2, UnitSystem::shown) + at_rate(catalogue);
    return text.empty() ? text : text + ".";
}

std::string wall_answer(const AgainstResult& r) {
    const std::string metal = metal_of(r.second);
    if (r.equal_wall_m)
        return " At a wall of " + millimetres(*r.equal_wall_m) + " the second, " + metal +
               ", would hold the magnet as long as the first.";
    return r.second_longer || r.second.model->wall()
               ? ""
               : " No wall of " + metal + " with that bore, however thick, would hold it as long.";
}

std::string sentence_of(const Catalogue& catalogue, const AgainstResult& r) {
    const DropResult &longer = r.second_longer ? r.second : r.first, &shorter = r.second_longer ? r.first : r.second;
    const auto told = [&](const DropResult& d) {
        const std::string magnet =
            r.same_magnet ? "" : ", with the magnet of " + significant(d.moment_A_m2, 3) + " A·m²";
        return seconds(d.fall.time_s, d.fall_time_low90_s, d.fall_time_high90_s) + " in " + tube_in_words(d) + magnet;
    };
    const std::string interval =
        " (90 % interval " + significant(r.ratio_low90, 3) + " to " + significant(r.ratio_high90, 3);
    std::string text = "The magnet falls for " + told(longer) + "; and for " + told(shorter) + ": ";
    text += r.tie ? "the data can't tell them apart, the ratio is " + significant(r.ratio_median, 3) + interval +
                        "), and the first is ahead with a probability of only " + chance(r.p_longer) + "."
                  : significant(r.ratio_median, 3) + " times as long" + interval + "; probability " +
                        chance(r.p_longer) + ").";
    return text + weights(catalogue, longer, shorter) + wall_answer(r);
}

Problem named(Problem problem, const char* which) {
    problem.text = std::string(which) + " set-up: " + problem.text;
    return problem;
}

} // namespace

std::string tube_in_words(const DropResult& r) {
    const eddy::DropInputs& i = r.setup.inputs;
    return metal_of(r) + " at " + trimmed(r.conditions.temperature_K - 273.15, 4) + " °C, bore " +
           millimetres(2 * i.bore_radius_m.value) + ", wall " + millimetres(wall_of(r)) + ", length " +
           millimetres(i.tube_length_m.value);
}

Result<AgainstResult> against(const Catalogue& catalogue, const AgainstRequest& request) {
    Result<DropResult> first = drop(catalogue, request.first), second = drop(catalogue, request.second);
    if (!first) return named(first.problem(), "first");
    if (!second) return named(second.problem(), "second");
    AgainstResult r;
    r.first = std::move(*first);
    r.second = std::move(*second);
    r.same_magnet = same_magnet(request.first.setup, request.second.setup);
    compare(r, request);
    r.equal_wall_m = equal_wall(r);
    r.sentence = sentence_of(catalogue, r);
    return r;
}

} // namespace pourbook

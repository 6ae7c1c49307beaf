#include "questions/drop/tube_metal.hpp"

#include "core/evaluate/sampled.hpp"
#include "core/laws/draw_parts.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/say/amounts.hpp"
#include "questions/say/casting_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double resistivity_doubt = 0.01;
constexpr double least_ohm_m = 1e-13, most_ohm_m = 1; // the purest metal in deep cold; what hardly conducts

constexpr double purity_decides = 0.2; // spread of ln(resistivity) from which sources differ by their metal's purity

Result<TubeMetal> stated(const std::string& text) {
    static const Dimension ohm_metre = parse_unit("ohm.m")->dimension;
    const std::string option = "--resistivity";
    std::string_view rest = text;
    const Result<double> number = take_written_number(rest);
    if (number && *number == 0)
        return refused("--resistivity 0: that is a superconductor, which repels the magnet at the mouth; the "
                       "eddy-current equations don't hold");
    const Result<eddy::Uncertain> value = uncertain_from(text, ohm_metre, option);
    if (!value) return value.problem();
    if (!(value->value > 0) || !std::isfinite(value->value))
        return unreadable("--resistivity '" + text + "': a resistivity or conductivity above zero is expected");
    if (value->value < least_ohm_m || value->value > most_ohm_m)
        return Problem{Problem::Kind::refused,
                       "--resistivity '" + text +
                           "': between 1e-13 and 1 ohm.m the model knows what to do: is the unit right?",
                       0};
    TubeMetal out;
    out.resistivity_si = value->value;
    double relative = value->spread / std::sqrt(3.0) / value->value;
    if (relative == 0) {
        relative = resistivity_doubt;
        out.notes.push_back("resistivity given without a tolerance: 1 % assumed");
    }
    out.causes.push_back({"tube.resistivity", relative});
    return out;
}

/// Of which casting the answer is; that the person's own count, and what they say.
void tell_state(TubeMetal& tube, const Catalogue& catalogue, const Conditions& conditions, const Evaluated& e) {
    const auto own =
        std::find_if(e.trail.begin(), e.trail.end(), [](const std::string& line) { return line.starts_with("your "); });
    if (own != e.trail.end())
        tube.notes.push_back(*own + "; without them: --own-trials off");
    else
        tube.notes.push_back(tube.metal->name + " " + casting_words(catalogue, *tube.metal, *conditions.casting) +
                             "; handbook metal: --as handbook");
}

} // namespace

double TubeMetal::log_uncertainty() const {
    double u = 0;
    for (const Cause& c : value.terms.empty() ? causes : weighted_causes(value))
        u = std::hypot(u, log_spread(c.relative));
    return u;
}

std::vector<double> TubeMetal::conductivities(Draws& draws) const {
    if (!value.terms.empty()) {
        std::vector<double> drawn = sampled(value, draws);
        for (double& x : drawn) x = 1 / x;
        return drawn;
    }
    std::vector<double> out(draws.samples(), conductivity_S_m());
    for (const Cause& cause : causes) {
        const auto& column = draws.of(cause.key);
        for (std::size_t i = 0; i < out.size(); ++i) out[i] *= std::exp(-log_spread(cause.relative) * column[i]);
    }
    return out;
}

Result<Evaluated> tube_density(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) {
    Result<Evaluated> here = evaluate(catalogue, metal, "density", conditions);
    if (here) return here;
    Conditions room = conditions;
    room.temperature_K = room_temperature_K;
    return evaluate(catalogue, metal, "density", room);
}

Result<TubeMetal> tube_metal(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) {
    const double t = conditions.temperature_K;
    if (ferromagnetic_at(catalogue, metal, t))
        return refused(metal.name + " is ferromagnetic at " + celsius_text(t) +
                       ": it attracts the magnet, which sticks to the wall; choose a non-magnetic tube");
    if (const std::string why = superconducting_at(catalogue, metal, t); !why.empty())
        return refused(metal.name + " at " + celsius_text(t) + ": " + why +
                       "; a superconducting tube repels the magnet and the eddy-current equations don't hold");
    if (phase_at(catalogue, metal, t) == Phase::liquid)
        return refused(metal.name + " is molten at " + celsius_text(t) + ": it makes no tube");
    Result<Evaluated> e = evaluate(catalogue, metal, "resistivity", conditions);
    if (!e) return e.problem();
    add_draw_parts(*e, catalogue, metal, "resistivity", conditions);
    if (!(e->value_si > 0))
        return refused(metal.name + " at " + celsius_text(t) +
                       ": the residual resistivity asked for leaves no resistivity above zero");
    TubeMetal out;
    out.metal = &metal;
    out.resistivity_si = e->value_si;
    out.causes = e->causes;
    if (of_casting(conditions) && !std::isnan(e->handbook_si)) tell_state(out, catalogue, conditions, *e);
    const auto behaviour = evaluate(catalogue, metal, "magnetic_behaviour", conditions);
    if (behaviour && behaviour->text == "weakly magnetic")
        out.notes.push_back(metal.name +
                            " can be weakly magnetic (cold work, composition): test it with the magnet first");
    if (out.log_uncertainty() > purity_decides)
        out.notes.push_back("at " + celsius_text(t) +
                            " the purity decides the resistivity: give --purity-rrr if it is known");
    out.value = std::move(*e);
    return out;
}

Result<TubeMetal> tube_metal(const Catalogue& catalogue, const std::string& metal, const std::string& resistivity,
                             const Conditions& conditions) {
    if (metal.empty() == resistivity.empty())
        return unreadable(
            "the tube needs --metal METAL or --resistivity R (a conductivity such as 58MS/m or 101%IACS will do)");
    if (!resistivity.empty()) return stated(resistivity);
    const Result<const Metal*> found = find_metal(catalogue, metal);
    if (!found) return found.problem();
    return tube_metal(catalogue, **found, conditions);
}

} // namespace pourbook

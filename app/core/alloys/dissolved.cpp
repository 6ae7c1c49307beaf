#include "core/alloys/dissolved.hpp"

#include "core/alloys/diagram.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double very_hot_K = 1e5;

/// The binary of the host with one solute, in per cent by mass of the solute.
struct Pair {
    const Diagram& diagram;
    const std::string& host;
    double solute_wt; // of host + solute

    double on_axis(double wt) const { return diagram.a == host ? wt : 100 - wt; }
};

std::string host_phase(const std::string& host) {
    return "(" + host + ")";
}

/// Mean content of the cored host after freezing, its part of what the last liquid becomes included.
double cored_content(const Pair& p, double decomposed_K) {
    const Result<Scheil> s = scheil(p.diagram, p.on_axis(p.solute_wt));
    const std::optional<Solubility> most = solubility(p.diagram, p.host, decomposed_K);
    if (!s) return most ? std::min(p.solute_wt, most->wt) : p.solute_wt;
    if (s->primary != host_phase(p.host)) return most ? most->wt : p.solute_wt;
    const double primary = p.on_axis(s->primary_mean_wt);
    if (!most || s->last_liquid_share <= 0) return primary;
    const double last = p.on_axis(s->steps.back().liquid_wt);
    const double in_eutectic =
        std::clamp((most->second_wt_solute - last) / (most->second_wt_solute - most->wt), 0.0, 1.0);
    const double late = s->last_liquid_share * in_eutectic;
    return (s->primary_share * primary + late * most->wt) / (s->primary_share + late);
}

class Solidifier {
public:
    Solidifier(const AlloySetting& setting, const std::string& host) : setting_(setting) { out_.host = host; }

    Result<SolidState> run() {
        for (const Share& s : setting_.composition.shares())
            if (s.element == out_.host) out_.host_wt = s.wt_percent;
        for (const Share& s : setting_.composition.shares())
            if (s.element != out_.host) add(s);
        if (!missing_.empty())
            return Problem{Problem::Kind::no_value,
                           "no rule for " + missing_ + " in " + out_.host + ": no diagram or table reaches that far",
                           0};
        return std::move(out_);
    }

private:
    /// Most of the solute that the pair's host holds after the treatment, in per cent of its phase.
    double limit(const Pair& p, Treatment treatment) {
        const FrozenState* frozen = setting_.data().frozen_state(p.host, name_of(treatment));
        if (treatment == Treatment::aged && frozen && !std::isnan(frozen->share)) {
            cite_state(frozen->citation);
            const double soft = limit(p, Treatment::annealed), hard = limit(p, Treatment::quenched);
            return soft + frozen->share * (std::min(hard, p.solute_wt) - std::min(soft, p.solute_wt));
        }
        const double where_K = treatment == Treatment::quenched || !frozen ? very_hot_K : frozen->temperature_K;
        const double most = treatment == Treatment::as_cast ? cored_content(p, where_K) : 100;
        if (treatment == Treatment::as_cast && !frozen) return most;
        if (frozen) cite_state(frozen->citation);
        const auto s = solubility(p.diagram, p.host, where_K);
        return s ? std::min(most, s->wt) : most;
    }

    void cite_state(const Citation& c) {
        const bool known = std::any_of(out_.sources.begin(), out_.sources.end(), [&](const Citation& x) {
            return x.source == c.source && x.locator == c.locator;
        });
        if (!known) out_.sources.push_back(c);
    }

    void add(const Share& s) {
        SoluteState state;
        state.element = s.element;
        state.dissolved_wt = s.wt_percent;
        const auto& asked = setting_.dissolved;
        if (std::find(asked.begin(), asked.end(), s.element) != asked.end()) {
            out_.trail.push_back(s.element + ": " + trimmed(s.wt_percent, 3) + " % taken as dissolved, as asked");
            out_.solutes.push_back(state);
            return;
        }
        const Diagram* diagram = setting_.data().diagram(out_.host, s.element);
        if (!diagram) {
            const bool known = setting_.data().effect(out_.host, s.element, true) != nullptr;
            if (s.wt_percent >= (known ? undrawn_wt : traces_wt) && !setting_.data().table(out_.host, s.element))
                missing_ += (missing_.empty() ? "" : ", ") + s.element;
            else
                out_.trail.push_back(s.element + ": no diagram with " + out_.host + " is stored; taken as dissolved");
            out_.solutes.push_back(state);
            return;
        }
        state.has_diagram = true;
        split(state, *diagram);
        out_.solutes.push_back(state);
    }

    void split(SoluteState& state, const Diagram& diagram) {
        const double all = state.dissolved_wt;
        const Pair pair{diagram, out_.host, 100 * all / (all + out_.host_wt)};
        const auto hot = solubility(diagram, out_.host, very_hot_K);
        if (!hot) return; // one solid solution, or no limit drawn
        const double content = std::min(limit(pair, setting_.treatment), pair.solute_wt);
        state.dissolved_wt = std::min(all, out_.host_wt * content / (100 - content));
        state.out_wt = all - state.dissolved_wt;
        if (state.out_wt < 1e-9 * all) state.out_wt = 0;
        for (const DiagramField& f : diagram.fields)
            if (f.left == host_phase(out_.host) || f.right == host_phase(out_.host)) state.citation = &f.citation;
        if (state.citation) cite_state(*state.citation);
        if (state.out_wt > 0) {
            second_phase(state, pair);
            if (pair.solute_wt > state.second_wt_solute) missing_ += (missing_.empty() ? "" : ", ") + state.element;
            state.second_wt = (all + out_.host_wt) * (pair.solute_wt - content) / (state.second_wt_solute - content);
        }
        out_.trail.push_back(state.element + ": " + trimmed(state.dissolved_wt, 3) + " % of the alloy dissolved in " +
                             out_.host +
                             (state.out_wt > 0 ? ", " + trimmed(state.out_wt, 3) + " % as " + state.second_phase : ""));
    }

    /// What the rest becomes. A second metal keeps what the treatment is known to leave in it as a host of its own: so
    /// the two phases are the same on either side of the content where the host changes.
    void second_phase(SoluteState& state, const Pair& pair) {
        const double host_K = frozen_K(out_.host), own_K = frozen_K(state.element);
        const auto rest = solubility(pair.diagram, out_.host, std::isnan(host_K) ? very_hot_K : host_K);
        state.second_phase = rest->second_phase;
        state.second_wt_solute = rest->second_wt_solute;
        if (!std::isnan(own_K) && rest->second_phase == host_phase(state.element))
            state.second_wt_solute =
                100 - limit({pair.diagram, state.element, 100 - pair.solute_wt}, setting_.treatment);
    }

    /// Where the treatment leaves the solubility in the host; NaN: no temperature is stored.
    double frozen_K(const std::string& host) const {
        const FrozenState* frozen = setting_.data().frozen_state(host, name_of(setting_.treatment));
        return frozen ? frozen->temperature_K : no_number;
    }

    const AlloySetting& setting_;
    SolidState out_;
    std::string missing_;
};

} // namespace

Result<SolidState> solid_state(const AlloySetting& setting) {
    return Solidifier(setting, setting.composition.host()).run();
}

} // namespace pourbook

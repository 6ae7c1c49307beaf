#include "core/laws/casting_value.hpp"

#include "core/alloys/resistivity.hpp"
#include "core/evaluate/sampled.hpp"
#include "core/laws/anchor.hpp"
#include "core/laws/draw_parts.hpp"
#include "core/laws/host.hpp"
#include "core/laws/own_castings.hpp"
#include "core/laws/porosity.hpp"
#include "core/laws/structure.hpp"
#include "core/laws/traces.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace pourbook {
namespace {

constexpr std::size_t draws_for_trials = 2000;
constexpr double lorenz_si = 2.443e-8; // W ohm / K2, of a free electron gas (Sommerfeld)

bool is_mix(const Metal& metal) {
    return std::any_of(metal.records.begin(), metal.records.end(),
                       [](const Record& r) { return r.id.starts_with("estimate."); });
}

/// The treatment that the condition of a figure stands for; that of the metal's usual state where none is stated.
Treatment known_treatment(const Metal& metal, const Conditions& plain, const std::string& condition) {
    if (condition.starts_with("solution-treated")) return Treatment::quenched;
    for (const Treatment t : {Treatment::as_cast, Treatment::annealed, Treatment::aged})
        if (condition.starts_with(name_of(t))) return t;
    return treatment_of(metal, plain);
}

/// The figure a casting's value starts from.
struct CastBase {
    Evaluated value;
    bool as_stated = false; // cited, or estimated, for the casting's own condition
    std::optional<Structure> structure;
};

class CastingOf {
public:
    CastingOf(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions)
        : catalogue_(catalogue), metal_(metal), state_(*conditions.casting), plain_(conditions) {
        plain_.casting.reset();
    }

    Result<Evaluated> resistivity() {
        Result<Evaluated> out = conducting("resistivity", 1);
        if (!out || out->terms.empty()) return out;
        add_conduction_pores(*out, -conduction_exponent);
        if (const auto change = by_own_castings()) follow(*out, *change, 1);
        return out;
    }

    Result<Evaluated> thermal_conductivity() {
        // In thermal resistivities: what adds rho to the electrical one adds rho / (L0 T).
        Result<Evaluated> out = conducting("thermal_conductivity", 1 / (lorenz_si * plain_.temperature_K));
        if (!out || out->terms.empty()) return out;
        add_conduction_pores(*out, conduction_exponent);
        if (const auto change = by_own_castings()) follow(*out, *change, 1 / (lorenz_si * plain_.temperature_K));
        return out;
    }

    Result<Evaluated> density() {
        Result<Evaluated> e = evaluate(catalogue_, metal_, "density", plain_);
        if (!e || e->condition == "liquid") return e;
        e->handbook_si = e->value_si;
        e->terms = {{e->value_si, e->causes}};
        add_pores(*e, porosity_of(catalogue_, metal_, state_), "porosity", density_exponent);
        close(*e);
        return e;
    }

    Result<Evaluated> other(const std::string& property) {
        return evaluate(catalogue_, metal_, property, in_treatment());
    }

private:
    Conditions in_treatment() const {
        Conditions c = plain_;
        if (!is_mix(metal_) || !state_.treatment.empty()) c.condition = condition_of(treatment_of(state_));
        return c;
    }

    Result<CastBase> base_of(const std::string& property) {
        if (metal_.is_element()) return known(property, {});
        const Treatment asked = treatment_of(state_);
        const Result<Evaluated> cast = evaluate(catalogue_, metal_, property, in_treatment());
        const bool estimated = cast && cast->basis == Basis::estimated;
        const bool found = cast && (is_mix(metal_) || estimated || cast->condition.starts_with(condition_of(asked)));
        if (!found) return known(property, cast);
        handbook_si_ = cast->value_si;
        if (plain_.story)
            if (const Result<Evaluated> usual = evaluate(catalogue_, metal_, property, plain_))
                handbook_si_ = usual->value_si;
        const bool by_rule = estimated && !is_mix(metal_);
        return CastBase{*cast, true, by_rule ? structure_between(catalogue_, metal_, asked, asked) : std::nullopt};
    }

    /// From what is cited in whatever condition; `cast`, widened for its condition, where no rule bridges the two.
    Result<CastBase> known(const std::string& property, const std::optional<Result<Evaluated>>& cast) {
        const Result<Evaluated> usual = evaluate(catalogue_, metal_, property, plain_);
        if (!usual) return cast && *cast ? Result<CastBase>(CastBase{**cast, false, {}}) : usual.problem();
        handbook_si_ = usual->value_si;
        if (metal_.is_element()) return CastBase{*usual, false, {}};
        const Treatment from = known_treatment(metal_, plain_, usual->condition);
        const auto structure = structure_between(catalogue_, metal_, from, treatment_of(state_));
        if (!structure) return CastBase{cast && *cast ? **cast : *usual, false, {}};
        Conditions there = plain_; // in its own condition the figure is not widened for another one
        if (!usual->condition_matches) there.condition = usual->condition;
        const Result<Evaluated> own = evaluate(catalogue_, metal_, property, there);
        return CastBase{own ? *own : *usual, false, structure};
    }

    /// What the person's own castings say of the resistivity at 20 degC.
    struct OwnChange {
        double change_si = 0; // of its median
        double spread_si = 0; // standard uncertainty of the next casting's
        std::size_t trials = 0;
        NextCasting next;
    };

    std::optional<OwnChange> by_own_castings() const {
        Conditions room = plain_;
        room.casting = state_;
        const std::vector<OwnCasting> trials = own_castings_of(catalogue_, metal_, room);
        if (trials.empty()) return std::nullopt;
        room.casting->own_trials = false;
        room.temperature_K = room_temperature_K;
        room.story = false;
        const Result<Evaluated> before = casting_value(catalogue_, metal_, "resistivity", room);
        if (!before) return std::nullopt;
        Draws draws(draws_for_trials, 1);
        const NextCasting next =
            next_casting(trials, sampled(*before, draws), scatter_between_castings(catalogue_, metal_));
        return OwnChange{next.resistivity_si - before->value_si, next.resistivity_si * next.relative, trials.size(),
                         next};
    }

    /// The excess over the drawn middle, and its doubt, are the same at every temperature (Matthiessen).
    void follow(Evaluated& e, const OwnChange& own, double per_ohm_m) {
        const bool thermal = e.terms_reciprocal;
        const double before = thermal ? 1 / e.value_si : e.value_si;
        const double after = std::max(before + own.change_si * per_ohm_m, before / 2);
        e.pores.clear();
        e.terms = {{after, {{state_key(metal_, "own_castings"), std::expm1(own.spread_si * per_ohm_m / after)}}}};
        e.law = "your own castings";
        close(e);
        if (plain_.story)
            e.trail.push_back("your " + metal_.slug + ", from " + std::to_string(own.trials) +
                              (own.trials == 1 ? " trial: " : " trials: ") +
                              rounded_to(1e-6 / own.next.resistivity_si,
                                         normal_90 * 1e-6 * own.next.mean_relative / own.next.resistivity_si) +
                              " +- " +
                              significant(normal_90 * 1e-6 * own.next.mean_relative / own.next.resistivity_si, 2) +
                              " MS/m in the mean (90 %), " + significant(100 * normal_90 * own.next.relative, 2) +
                              " % for the next casting");
    }

    /// Terms of the resistivity, or of the thermal resistivity; `per_ohm_m`: what an ohm m counts in them.
    Result<Evaluated> conducting(const std::string& property, double per_ohm_m) {
        Result<CastBase> base = base_of(property);
        if (!base) return base.problem();
        Evaluated e = std::move(base->value);
        if (e.condition == "liquid" || !(e.value_si > 0)) return e;
        e.handbook_si = handbook_si_;
        const bool thermal = property == "thermal_conductivity";
        foreign_ = !plain_.rrr && !is_mix(metal_) && (!base->as_stated || state_.feedstock_stated());
        const std::vector<Trace> traces = foreign_ ? traces_of(catalogue_, metal_, state_) : std::vector<Trace>();
        split(e, property, !traces.empty());
        if (e.terms.empty()) e.terms = {{thermal ? 1 / e.value_si : e.value_si, e.causes}};
        e.terms_reciprocal = thermal;
        if (base->structure) add_structure(e, *base->structure, per_ohm_m);
        for (const Trace& t : traces) add_trace(e, t, per_ohm_m);
        return e;
    }

    void split(Evaluated& e, const std::string& property, bool contents_known) {
        Conditions c = plain_;
        if (metal_.is_element() && !contents_known) c.condition = condition_of(Treatment::as_cast);
        if (property == "resistivity") add_draw_parts(e, catalogue_, metal_, property, c);
    }

    void add_structure(Evaluated& e, const Structure& s, double per_ohm_m) {
        // An alloy keeps at least half of what it has above its host.
        const double last = e.terms.back().nominal_si();
        const double change = std::max(s.change_si * per_ohm_m, -last / 2);
        if (change != 0)
            e.terms.push_back({change, {{state_key(metal_, "treatment"), s.doubt_si / std::abs(s.change_si)}}});
        if (s.high_si > s.low_si)
            e.terms.push_back(
                {per_ohm_m,
                 {},
                 {{state_key(metal_, "structure"), std::max(s.low_si, -last / per_ohm_m / 2), s.high_si}}});
        if (plain_.story && change != 0)
            e.trail.push_back(std::string("treatment ") + name_of(treatment_of(state_)) + ": " +
                              significant(s.change_si * 1e8, 2) + " uohm.cm by the estimates from composition");
    }

    void add_trace(Evaluated& e, const Trace& t, double per_ohm_m) {
        const Metal* host = main_element(catalogue_, metal_);
        if (!host || t.high_wt <= 0) return;
        const std::string& symbol = symbol_of(*host);
        double per_wt = 0, doubt = 0;
        const Citation* source = nullptr;
        if (const SoluteEffect* out = catalogue_.alloys.effect(symbol, t.element, false); !t.dissolved) {
            if (!out) return;
            per_wt = out->ohm_m_per_percent;
            doubt = precipitate_doubt;
            source = &out->citation;
        } else {
            const Result<Estimate> k = increment_per_wt(catalogue_, symbol, t.element);
            if (!k) return;
            per_wt = k->value_si;
            doubt = k->standard_uncertainty_si / k->value_si;
            source = &catalogue_.alloys.effect(symbol, t.element, true)->citation;
        }
        e.terms.push_back({per_wt * per_ohm_m,
                           {{"increment." + symbol + "." + t.element, doubt}},
                           {{content_key(metal_, t.element) + (t.dissolved ? "" : ".out"), t.low_wt, t.high_wt}}});
        if (!plain_.story) return;
        e.trail.push_back(t.element + " " + range_text(t.low_wt, t.high_wt) + " %" +
                          (t.dissolved ? "" : " out of solution") + ": " + significant(per_wt * 1e8, 3) +
                          " uohm.cm per per cent [" + source->source + "]");
        e.sources.push_back({source->source, source->locator, source->through, "increment", "",
                             significant(per_wt * 1e8, 3) + " uohm.cm per % " + t.element, per_wt, source->how_known,
                             true});
    }

    void add_conduction_pores(Evaluated& e, double exponent) {
        add_pores(e, porosity_of(catalogue_, metal_, state_), "porosity", exponent);
        if (foreign_) add_pores(e, oxide_of(catalogue_, metal_, state_), "oxide", exponent);
        close(e);
    }

    void add_pores(Evaluated& e, const CastPorosity& p, const char* what, double exponent) {
        if (p.range.high <= 0) return;
        e.pores.push_back({{state_key(metal_, what), p.range.low, p.range.high}, exponent});
        if (plain_.story)
            e.trail.push_back(
                std::string(what) + " " + range_text(100 * p.range.low, 100 * p.range.high) + " % of the volume" +
                (p.practice ? ", " + std::string(name_of(p.practice->citation.how_known)) : ", as stated"));
    }

    /// Value and uncertainty of the terms; what is changed is carried.
    void close(Evaluated& e) {
        e.value_si = nominal_of_terms(e);
        std::map<std::string, double> causes;
        for (const Cause& c : weighted_causes(e)) causes[c.key] += c.relative;
        e.causes.clear();
        double variance = 0;
        for (const auto& [key, relative] : causes) {
            e.causes.push_back({key, relative});
            variance += std::pow(log_spread(relative), 2);
        }
        e.standard_uncertainty_si = std::abs(e.value_si) * std::sqrt(variance);
        if (e.value_si == e.handbook_si) return;
        e.uncertainty_assumed = true;
        if (e.basis == Basis::cited) e.basis = Basis::carried;
        if (e.law.empty()) e.law = "cited figure with the casting's state";
        if (e.condition != condition_of(treatment_of(state_)))
            e.condition = treatment_of(state_) == Treatment::as_cast ? "as-cast" : condition_of(treatment_of(state_));
    }

    static std::string range_text(double low, double high) {
        return low == high ? trimmed(low, 3) : trimmed(low, 3) + " to " + trimmed(high, 3);
    }

    static constexpr double precipitate_doubt = 0.5;

    const Catalogue& catalogue_;
    const Metal& metal_;
    const CastingState& state_;
    Conditions plain_;
    double handbook_si_ = no_number;
    bool foreign_ = false; // foreign elements are drawn
};

Result<Evaluated> as_conductivity(Result<Evaluated> e) {
    if (!e) return e;
    e->value_si = 1 / e->value_si;
    e->standard_uncertainty_si *= e->value_si * e->value_si;
    e->handbook_si = 1 / e->handbook_si;
    e->terms_reciprocal = true;
    for (Pores& p : e->pores) p.exponent = -p.exponent;
    for (Cause& c : e->causes) c.relative = -c.relative;
    for (SourceValue& s : e->sources) s.value_si = 1 / s.value_si;
    e->spread_low_si = e->spread_high_si = e->value_si;
    return e;
}

} // namespace

std::string content_key(const Metal& metal, const std::string& element) {
    return metal.slug + ".content." + element;
}

std::string state_key(const Metal& metal, const char* what) {
    return metal.slug + "." + what;
}

Result<Evaluated> casting_value(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                                const Conditions& conditions) {
    CastingOf casting(catalogue, metal, conditions);
    if (property == "resistivity") return casting.resistivity();
    if (property == "conductivity") return as_conductivity(casting.resistivity());
    if (property == "thermal_conductivity") return casting.thermal_conductivity();
    if (property == "density") return casting.density();
    return casting.other(property);
}

} // namespace pourbook

#include "questions/mix/mix.hpp"

#include "core/alloys/density.hpp"
#include "core/alloys/expansion.hpp"
#include "core/alloys/thermal.hpp"
#include "core/casting/melt_loss.hpp"
#include "core/evaluate/money.hpp"
#include "core/quantity/format.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/mix/mix_scrap.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double precious_from_wt = 100.0 / 3;

Problem not_asked() {
    return Problem{Problem::Kind::no_value, "not asked", 0};
}

MixResult empty_result() {
    return {.composition = {},
            .treatment = Treatment::as_cast,
            .stocks = {},
            .blend = {},
            .mass_kg = no_number,
            .precious = {},
            .density = not_asked(),
            .linear_expansion = not_asked(),
            .temperature_coefficient = not_asked(),
            .thermal_conductivity = not_asked(),
            .resistivity = not_asked(),
            .melting = not_asked(),
            .phases = {},
            .phases_at_K = no_number,
            .metal_value = not_asked(),
            .value_as_of = {},
            .addition = {},
            .target = {},
            .impurities = {},
            .equivalents = {},
            .scrap_contents = {},
            .losses = {},
            .hazards = {},
            .sources = {}};
}

std::string precious_of(const Composition& c) {
    for (const Share& s : c.shares())
        for (const char* noble : {"Au", "Ag", "Pt", "Pd"})
            if (s.element == noble && s.wt_percent >= precious_from_wt) return s.element;
    return "";
}

Metal plain_metal(const Composition& c) {
    Metal m;
    m.slug = "estimate";
    m.kind = "alloy";
    for (const Share& s : c.shares()) m.composition.push_back({s.element, s.wt_percent, ""});
    return m;
}

class Mixer {
public:
    Mixer(const Catalogue& catalogue, const MixRequest& request)
        : catalogue_(catalogue), request_(request), out_(empty_result()) {}

    Result<MixResult> run() {
        for (auto step : {&Mixer::compose, &Mixer::take_in_impurities, &Mixer::lose, &Mixer::reach, &Mixer::dope})
            if (const auto fault = (this->*step)()) return *fault;
        estimate();
        widen_by_scrap(catalogue_, out_);
        lose_unevenly();
        warn();
        worth();
        gather_sources();
        return std::move(out_);
    }

private:
    using Fault = std::optional<Problem>;

    Fault compose() {
        out_.treatment = request_.treatment;
        out_.stocks = request_.stocks;
        if (request_.stocks.empty()) {
            if (!request_.composition)
                return Problem{Problem::Kind::unreadable,
                               "no metal is named: write \"1.2kg za-12 + 300g zinc\" or --composition \"Ag "
                               "92.5 Cu 7.5\"",
                               0};
            out_.composition = *request_.composition;
            return std::nullopt;
        }
        const Result<Blend> melted = blend(catalogue_.alloys, request_.stocks);
        if (!melted) return melted.problem();
        out_.blend = *melted;
        out_.composition = melted->composition;
        return std::nullopt;
    }

    /// What is stated as dissolved is part of the metal: every estimate below counts it.
    Fault take_in_impurities() {
        if (request_.impurities.empty()) return std::nullopt;
        const Result<Composition> whole = with_additions(catalogue_.alloys, out_.composition, request_.impurities);
        if (!whole) return whole.problem();
        out_.composition = *whole;
        return std::nullopt;
    }

    Fault lose() {
        out_.precious = precious_of(out_.composition);
        const Result<double> left = mass_after_loss_kg(out_.blend ? out_.blend->mass_kg() : 1, request_.melt_loss);
        if (!left) return left.problem();
        if (out_.blend) out_.mass_kg = *left;
        return std::nullopt;
    }

    /// Adding to the melt: the loss is taken off what has been melted together.
    Fault reach() {
        if (!request_.target) return std::nullopt;
        const MixTarget& t = *request_.target;
        const double start_kg = out_.blend ? out_.blend->mass_kg() : 1;
        const Result<double> add = mass_to_add_kg(start_kg, out_.composition.wt(t.content.element),
                                                  t.content.wt_percent, t.added.wt(t.content.element));
        if (!add) return add.problem();
        MixAddition a{*add, (start_kg + *add) * (1 - request_.melt_loss), out_.composition};
        if (*add > 1e-12) {
            const Result<Blend> both =
                blend(catalogue_.alloys, {{"the melt", start_kg, out_.composition}, {t.with, *add, t.added}});
            if (!both) return both.problem();
            a.result = both->composition;
        }
        out_.addition = a;
        out_.target = t;
        return std::nullopt;
    }

    Fault dope() {
        const std::string& host = out_.composition.host();
        for (const Share& s : request_.impurities) {
            const Result<ImpurityEffect> e = effect_of_impurity(catalogue_, host, s.element, s.wt_percent);
            if (!e) return e.problem();
            out_.impurities.push_back(*e);
        }
        if (!request_.measured_resistivity_si) return std::nullopt;
        const auto all = equivalent_impurities(catalogue_, host, *request_.measured_resistivity_si);
        if (!all) return all.problem();
        out_.equivalents = *all;
        return std::nullopt;
    }

    void estimate() {
        AlloySetting setting{catalogue_, out_.composition, out_.treatment};
        for (const Share& s : request_.impurities) setting.dissolved.push_back(s.element);
        out_.density = estimate_density(setting);
        out_.linear_expansion = estimate_expansion(setting);
        out_.resistivity = estimate_resistivity(setting);
        out_.melting = estimate_melting(setting);
        if (out_.resistivity) {
            out_.temperature_coefficient = estimate_temperature_coefficient(catalogue_, *out_.resistivity);
            out_.thermal_conductivity = estimate_thermal_conductivity(*out_.resistivity);
        } else {
            out_.temperature_coefficient = out_.resistivity.problem();
            out_.thermal_conductivity = out_.resistivity.problem();
        }
        if (!request_.phases_at_K) return;
        out_.phases_at_K = *request_.phases_at_K;
        if (!out_.melting)
            out_.phases = Result<std::vector<PhaseShare>>(out_.melting.problem());
        else if (!out_.melting->diagram || out_.composition.shares().size() > 2)
            out_.phases = Result<std::vector<PhaseShare>>(
                Problem{Problem::Kind::no_value, "no rule: phases are read for alloys of two elements", 0});
        else
            out_.phases = phases_at(*out_.melting->diagram, out_.melting->axis_wt, out_.phases_at_K);
    }

    /// Zinc, magnesium, phosphorus: which of it goes is known better than how much of the whole.
    void lose_unevenly() {
        Metal metal = plain_metal(out_.composition);
        if (const Metal* kin = nearest_kin(catalogue_, out_.composition)) metal.family = kin->family;
        const double start_kg = out_.blend ? out_.blend->mass_kg() : 1;
        const auto usual = casting::melt_loss({catalogue_, metal, Conditions{}}, start_kg);
        for (const casting::ElementLoss& e : usual.elements) {
            UnevenLoss loss{e.element, e.text, e.low_kg, e.high_kg, no_number, no_number};
            if (request_.melt_loss > 0) all_of_it(loss);
            out_.losses.push_back(std::move(loss));
        }
    }

    /// The stated loss taken from one element alone; left out where the melt holds less of it than that.
    void all_of_it(UnevenLoss& loss) const {
        std::vector<Share> left;
        const double kept = 1 - request_.melt_loss;
        for (const Share& s : out_.composition.shares())
            left.push_back(
                {s.element, (s.wt_percent - (s.element == loss.element ? 100 * request_.melt_loss : 0)) / kept, 0});
        if (std::any_of(left.begin(), left.end(), [](const Share& s) { return s.wt_percent < 0; })) return;
        const auto composition = composition_of(catalogue_.alloys, left);
        if (!composition) return;
        loss.wt_if_all = composition->wt(loss.element);
        const auto melting = estimate_melting({catalogue_, *composition, out_.treatment});
        if (melting) loss.liquidus_if_all_K = melting->liquidus.value_si;
    }

    /// What must not be melted unwarned: elements of the hazard table, at the most the scrap may hold.
    void warn() {
        for (const Practice& p : catalogue_.practices) {
            if (p.quantity != "refuse_melting" && p.quantity != "acknowledge") continue;
            if (p.element.empty() || !p.metal.empty()) continue;
            double most = out_.composition.wt(p.element);
            for (const ScrapContent& c : out_.scrap_contents)
                if (c.element == p.element) most = std::max(most, c.high_wt);
            if (most <= 0 || most < p.from_wt_percent) continue;
            out_.hazards.push_back(p.element + " up to " + significant(most, 2) + " %: " + p.text + ".");
        }
    }

    void worth() {
        const Metal metal = plain_metal(out_.composition);
        out_.metal_value = evaluate_metal_value(catalogue_, metal);
        if (!out_.metal_value) return;
        for (const Share& s : out_.composition.shares()) {
            const Metal* element = catalogue_.element(s.element);
            const Price* price = element ? catalogue_.price(element->slug) : nullptr;
            if (price && (out_.value_as_of.empty() || price->as_of < out_.value_as_of)) out_.value_as_of = price->as_of;
        }
    }

    void name_source(const std::string& key) {
        if (std::find(out_.sources.begin(), out_.sources.end(), key) == out_.sources.end()) out_.sources.push_back(key);
    }

    void gather_sources() {
        const auto of = [&](const Estimate& e) {
            for (const Citation& c : e.sources) name_source(c.source);
        };
        if (out_.resistivity) of(out_.resistivity->estimate);
        if (out_.density) of(*out_.density);
        if (out_.linear_expansion) of(*out_.linear_expansion);
        if (out_.melting) of(out_.melting->liquidus);
        for (const auto* list : {&out_.impurities, &out_.equivalents})
            for (const ImpurityEffect& i : *list) of(i.per_wt);
        if (out_.metal_value)
            for (const SourceValue& s : out_.metal_value->sources) name_source(s.key);
    }

    const Catalogue& catalogue_;
    const MixRequest& request_;
    MixResult out_;
};

} // namespace

Result<MixResult> mix(const Catalogue& catalogue, const MixRequest& request) {
    return Mixer(catalogue, request).run();
}

} // namespace pourbook

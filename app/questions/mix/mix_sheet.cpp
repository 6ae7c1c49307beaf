#include "questions/mix/mix_sheet.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/metals/temperature_words.hpp"
#include "questions/mix/mix_metal.hpp"
#include "questions/mix/mix_words.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>

namespace pourbook {
namespace {

Result<double> mass_from(const std::string& word) {
    const Result<double> kg = parse_si(word, base_dimension(Dimension::kilogram), "a mass");
    if (kg && !(*kg > 0)) return unreadable("a positive mass is expected, such as 300 g");
    return kg;
}

Result<double> paid_from(const Catalogue& catalogue, const std::string& word) {
    const Result<double> usd = usd_from(catalogue, word, "paid");
    if (usd && !(*usd >= 0))
        return unreadable("an amount such as " + round_amount(catalogue, 850, " ") + " is expected");
    return usd;
}

Result<double> loss_from(const std::string& word) {
    const Result<double> loss = parse_si(word, {}, "a melt loss");
    if (loss && !(*loss >= 0 && *loss < 1)) return unreadable("a melt loss from 0 to less than 100 % is expected");
    return loss;
}

Result<double> resistivity_from(const std::string& word) {
    static const Dimension ohm_m = parse_unit("ohm.m")->dimension;
    const Result<double> rho = parse_si(word, ohm_m, "a resistivity or conductivity");
    if (rho && !(*rho > 0 && std::isfinite(*rho))) return unreadable("a positive figure is expected, such as 85 %IACS");
    return rho;
}

template <class T> std::string why_not(const Result<T>& r) {
    return r ? "" : r.problem().text;
}

/// The stocks or the composition, treatment and loss: what every other question rests on.
Result<MixRequest> base_request(const Catalogue& c, const MixSheetWords& w) {
    MixRequest request;
    if (w.bare) {
        const Result<Composition> composition = composition_from(c, w.composition);
        if (!composition) return composition.problem();
        request.composition = *composition;
    } else {
        for (const MixStockWords& s : w.stocks) {
            const Result<double> kg = mass_from(s.mass);
            if (!kg) return kg.problem();
            const Result<Composition> composition = metal_composition(c, s.metal);
            if (!composition) return composition.problem();
            request.stocks.push_back({s.metal, *kg, *composition});
        }
    }
    request.treatment = treatment_named(w.treatment).value_or(Treatment::as_cast);
    if (!w.melt_loss.empty()) {
        const Result<double> loss = loss_from(w.melt_loss);
        if (!loss) return loss.problem();
        request.melt_loss = *loss;
    }
    if (!w.phases_at.empty())
        if (const Result<double> t = temperature_from(w.phases_at)) request.phases_at_K = *t;
    return request;
}

class SheetMaker {
public:
    SheetMaker(const Catalogue& c, const MixSheetWords& w) : catalogue_(c), words_(w) {}

    MixSheet run() {
        const Result<MixRequest> base = base_request(catalogue_, words_);
        if (!base) {
            out_.answer = base.problem();
            return std::move(out_);
        }
        request_ = *base;
        attempt(out_.impurity_fault, [&](MixRequest& r) { return add_impurities(r); });
        attempt(out_.target_fault, [&](MixRequest& r) { return add_target(r); });
        attempt(out_.measured_fault, [&](MixRequest& r) { return add_measured(r); });
        out_.answer = mix(catalogue_, request_);
        if (!out_.answer) return std::move(out_);
        money();
        name();
        hazards();
        charts();
        return std::move(out_);
    }

private:
    /// Keeps an optional part only where the whole can be answered with it.
    template <class Add> void attempt(std::string& fault, Add add) {
        MixRequest with = request_;
        const std::optional<Problem> unread = add(with);
        if (unread) {
            fault = unread->text;
            return;
        }
        if (const Result<MixResult> tried = mix(catalogue_, with)) {
            request_ = with;
        } else if (mix(catalogue_, request_)) {
            fault = tried.problem().text;
        }
    }

    std::optional<Problem> add_impurities(MixRequest& r) const {
        if (words_.impurities.empty()) return std::nullopt;
        const Result<std::vector<Share>> shares = shares_from(catalogue_, words_.impurities);
        if (!shares) return shares.problem();
        r.impurities = *shares;
        return std::nullopt;
    }

    std::optional<Problem> add_target(MixRequest& r) const {
        if (words_.target.empty()) return std::nullopt;
        const Result<Share> content = share_from(catalogue_, words_.target);
        if (!content) return content.problem();
        const std::string with = words_.with.empty() ? content->element : words_.with;
        const Result<Composition> added = metal_composition(catalogue_, with);
        if (!added) return added.problem();
        r.target = MixTarget{*content, with, *added};
        return std::nullopt;
    }

    std::optional<Problem> add_measured(MixRequest& r) const {
        if (words_.measured.empty()) return std::nullopt;
        const Result<double> rho = resistivity_from(words_.measured);
        if (!rho) return rho.problem();
        r.measured_resistivity_si = *rho;
        return std::nullopt;
    }

    void money() {
        const MixResult& r = *out_.answer;
        if (r.metal_value && r.blend) out_.worth_usd = r.metal_value->value_si * r.mass_kg;
        if (words_.bare) return;
        for (const MixStockWords& s : words_.stocks) {
            if (s.paid.empty()) continue;
            const Result<double> usd = paid_from(catalogue_, s.paid);
            if (!usd) {
                out_.paid_usd = no_number;
                out_.paid_fault = usd.problem().text;
                return;
            }
            out_.paid_usd = (std::isnan(out_.paid_usd) ? 0 : out_.paid_usd) + *usd;
        }
    }

    void name() {
        std::string& w = out_.words;
        if (words_.bare)
            w = words_.composition;
        else
            for (const MixStockWords& s : words_.stocks) w += (w.empty() ? "" : " + ") + s.mass + " " + s.metal;
        if (!request_.impurities.empty()) w += " with " + words_.impurities;
        if (request_.treatment != Treatment::as_cast) w += std::string(" ") + name_of(request_.treatment);
        w = "mix:" + w;
    }

    void hazards() {
        Metal m;
        for (const Share& s : out_.answer->composition.shares()) m.composition.push_back({s.element, s.wt_percent, ""});
        out_.cautions = catalogue_.cautions_for(m);
    }

    void charts() {
        const Composition& c = out_.answer->composition;
        const Result<MixAxis> axis = axis_of(catalogue_, c);
        if (!axis) {
            out_.no_diagram = axis.problem().text;
            return;
        }
        const auto& [a, b, wt_b] = *axis;
        out_.curve_wt = wt_b;
        PhaseDiagramRequest asked{a, b, out_.curve_wt, std::nullopt};
        if (c.shares().size() == 2) asked.temperature_K = request_.phases_at_K; // the lever rule is for two elements
        const Result<PhaseDiagram> d = phase_diagram(catalogue_, asked);
        if (d)
            out_.diagram = *d;
        else
            out_.no_diagram = d.problem().text;
        if (const Result<MixCurve> curve = mix_curve(catalogue_, {a, b, request_.treatment}))
            out_.curves.push_back(*curve);
    }

    const Catalogue& catalogue_;
    const MixSheetWords& words_;
    MixRequest request_;
    MixSheet out_;
};

} // namespace

MixSheet mix_sheet(const Catalogue& catalogue, const MixSheetWords& words) {
    return SheetMaker(catalogue, words).run();
}

std::string short_words(const Composition& composition) {
    std::string out;
    for (const Share& s : composition.shares())
        out += (out.empty() ? "" : " ") + s.element + " " + trimmed(s.wt_percent, 3);
    return out;
}

Result<MixAxis> axis_of(const Catalogue& catalogue, const Composition& composition) {
    const auto& shares = composition.shares();
    if (shares.size() < 2) return Problem{Problem::Kind::no_value, "a single element has no diagram", 0};
    MixAxis axis{shares[0].element, shares[1].element, 0};
    if (const Diagram* d = catalogue.alloys.diagram(axis.a, axis.b)) axis = {d->a, d->b, 0};
    const double wt_a = composition.wt(axis.a), wt_b = composition.wt(axis.b);
    axis.wt_b = 100 * wt_b / (wt_a + wt_b);
    return axis;
}

std::string name_on_axis(const Composition& composition) {
    return short_words(composition) + (composition.shares().size() > 2 ? " by its two main elements" : "");
}

std::string mix_word_fault(const Catalogue& catalogue, const std::string& name, const std::string& word) {
    if (name == "mass") return why_not(mass_from(word));
    if (name == "metal") return why_not(metal_composition(catalogue, word));
    if (name == "composition") return why_not(composition_from(catalogue, word));
    if (word.empty()) return "";
    if (name == "paid") return why_not(paid_from(catalogue, word));
    if (name == "melt-loss") return why_not(loss_from(word));
    if (name == "target") return why_not(share_from(catalogue, word));
    if (name == "with") return why_not(metal_composition(catalogue, word));
    if (name == "phases-at") return why_not(temperature_from(word));
    if (name == "impurities") return why_not(shares_from(catalogue, word));
    return why_not(resistivity_from(word));
}

} // namespace pourbook

#include "questions/mix/mix_metal.hpp"

#include "core/quantity/format.hpp"
#include "questions/mix/mix_words.hpp"
#include "questions/say/shown.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::string_view prefix = "mix:";
constexpr double ferromagnetic_from_at = 50, weakly_magnetic_from_wt = 1;
constexpr double kin_within_wt = 15; // a metal further away lends no foundry practice

std::string trimmed_blanks(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Takes a treatment off the end of the words.
std::optional<Treatment> take_treatment(std::string& words) {
    const std::size_t blank = words.find_last_of(" \t");
    if (blank == std::string::npos) return std::nullopt;
    const std::optional<Treatment> treatment = treatment_named(words.substr(blank + 1));
    if (treatment) words = trimmed_blanks(words.substr(0, blank));
    return treatment;
}

std::string condition_of(Treatment t) {
    return t == Treatment::quenched ? "solution-treated" : name_of(t);
}

Record record_of(const Property& property, const Estimate& e, double temperature_K, const std::string& condition) {
    Record r;
    r.id = "estimate." + property.id;
    r.property = property.id;
    r.phase = property.id == "solidus" || property.id == "liquidus" ? Phase::any : Phase::solid;
    r.condition = condition;
    Point p;
    p.temperature_K = temperature_K;
    p.value_si = e.value_si;
    p.printed = significant(shown_number(property, e.value_si, UnitSystem::shown), 4);
    r.unit = property.shown_unit;
    r.points.push_back(p);
    r.uncertainty_relative = e.standard_uncertainty_si / e.value_si;
    r.note = "estimated from the composition by the rule: " + e.rule + (e.error.empty() ? "" : "; " + e.error);
    r.citation = {e.sources.empty() ? "" : e.sources.front().source, "estimate: " + e.rule, HowKnown::computed, ""};
    return r;
}

double distance_wt(const Metal& known, const Composition& c) {
    double sum = 0;
    for (const Share& s : c.shares()) sum += std::abs(s.wt_percent - known.content_percent(s.element));
    for (const Portion& p : known.composition)
        if (c.wt(p.element) <= 0) sum += std::abs(p.wt_percent);
    return sum / 2;
}

Record magnetic_record(const Composition& c) {
    const double iron_group = c.at("Fe") + c.at("Co") + c.at("Ni");
    Record r;
    r.id = "estimate.magnetic_behaviour";
    r.property = "magnetic_behaviour";
    r.text = iron_group > ferromagnetic_from_at                   ? "ferromagnetic"
             : c.wt("Fe") + c.wt("Co") >= weakly_magnetic_from_wt ? "weakly magnetic"
                                                                  : "non-magnetic";
    r.citation = {"trade-practice", "rule of ours from the content of iron, cobalt and nickel", HowKnown::computed, ""};
    return r;
}

class MetalMaker {
public:
    MetalMaker(const Catalogue& catalogue, const std::string& words, const MixResult& base)
        : catalogue_(catalogue), base_(base) {
        metal_.slug = words;
        metal_.name = "estimate: " + trimmed_blanks(words.substr(names_mix(words) ? prefix.size() : 0));
        metal_.kind = "alloy";
        metal_.aliases = {words};
        metal_.note = "An estimate from the composition, not a measurement.";
        metal_.reference_condition = condition_of(base.treatment);
        for (const Share& s : base.composition.shares()) metal_.composition.push_back({s.element, s.wt_percent, ""});
        if (const Metal* kin = nearest_kin(catalogue, base.composition)) {
            metal_.family = kin->family;
            metal_.note += " For foundry practice it counts as " + kin->family + ", like " + kin->name +
                           ", the nearest known composition.";
        }
    }

    void add_treated(const MixResult& r) {
        const std::string condition = condition_of(r.treatment);
        if (r.resistivity) add("resistivity", r.resistivity->estimate, room_temperature_K, condition);
        if (r.thermal_conductivity) add("thermal_conductivity", *r.thermal_conductivity, room_temperature_K, condition);
        if (r.density) add("density", *r.density, room_temperature_K, condition);
    }

    Metal finished() {
        if (base_.temperature_coefficient)
            add("temperature_coefficient", *base_.temperature_coefficient, room_temperature_K,
                metal_.reference_condition);
        else
            lacks("temperature_coefficient", base_.temperature_coefficient.problem());
        if (base_.linear_expansion)
            add("linear_expansion_at", *base_.linear_expansion, room_temperature_K, "");
        else
            lacks("linear_expansion_at", base_.linear_expansion.problem());
        if (base_.melting) {
            add("solidus", base_.melting->solidus, no_number, "");
            add("liquidus", base_.melting->liquidus, no_number, "");
        }
        if (!base_.resistivity) lacks("resistivity", base_.resistivity.problem());
        if (!base_.thermal_conductivity) lacks("thermal_conductivity", base_.thermal_conductivity.problem());
        if (!base_.density) lacks("density", base_.density.problem());
        for (const char* end : {"solidus", "liquidus"})
            if (!base_.melting) lacks(end, base_.melting.problem());
        metal_.records.push_back(magnetic_record(base_.composition));
        without_rule();
        return std::move(metal_);
    }

private:
    void add(const char* id, const Estimate& e, double temperature_K, const std::string& condition) {
        const Property* property = catalogue_.property(id);
        if (!property) return;
        metal_.records.push_back(record_of(*property, e, temperature_K, condition));
        if (metal_.composition_citation.source.empty()) metal_.composition_citation = metal_.records.back().citation;
    }

    void without_rule() {
        for (const Property& p : catalogue_.properties) {
            const bool known = std::any_of(metal_.records.begin(), metal_.records.end(),
                                           [&](const Record& r) { return r.property == p.id; });
            if (!known && p.from.empty() && !p.is_text && p.dimension.exponent[Dimension::money] == 0 &&
                p.id != "conductivity")
                lacks(p.id.c_str(),
                      {Problem::Kind::no_value, "no rule with a measured error estimates it from the composition", 0});
        }
    }

    /// Why there is no value, in the words of the rule that doesn't reach.
    void lacks(const char* property, const Problem& why) {
        Record r;
        r.id = std::string("estimate.") + property + ".none";
        r.property = property;
        r.none = why.text;
        r.citation = {"", "no rule", HowKnown::computed, ""};
        metal_.records.push_back(std::move(r));
    }

    const Catalogue& catalogue_;
    const MixResult& base_;
    Metal metal_;
};

Result<Metal> estimated_metal(const Catalogue& catalogue, const MixRequest& request, const std::string& words) {
    const Result<MixResult> base = mix(catalogue, request);
    if (!base) return base.problem();
    MetalMaker maker(catalogue, words, *base);
    for (const Treatment t : {Treatment::as_cast, Treatment::annealed, Treatment::quenched, Treatment::aged}) {
        MixRequest treated = request;
        treated.treatment = t;
        if (const Result<MixResult> r = mix(catalogue, treated)) maker.add_treated(*r);
    }
    return maker.finished();
}

} // namespace

bool names_mix(const std::string& word) {
    return word.starts_with(prefix);
}

const Metal* nearest_kin(const Catalogue& catalogue, const Composition& c) {
    const Metal* best = nullptr;
    double least = kin_within_wt;
    for (const Metal& m : catalogue.metals) {
        if (m.composition.empty() || names_mix(m.slug)) continue;
        const double away = distance_wt(m, c);
        if (away > least || (best && away >= least)) continue;
        best = &m;
        least = away;
    }
    return best;
}

Result<MixRequest> mix_request_from(const Catalogue& catalogue, const std::string& words) {
    std::string rest = trimmed_blanks(words.substr(names_mix(words) ? prefix.size() : 0));
    if (rest.empty())
        return Problem{Problem::Kind::unreadable,
                       "'mix:' needs a mix behind it, such as \"mix:1.2kg za-12 + 300g zinc\" or \"mix:Ag "
                       "92.5 Cu 7.5 annealed\"",
                       0};
    MixRequest request;
    request.treatment = take_treatment(rest).value_or(Treatment::as_cast);
    if (const std::size_t at = rest.find(" with "); at != std::string::npos) {
        const Result<std::vector<Share>> impurities = shares_from(catalogue, rest.substr(at + 6));
        if (!impurities) return impurities.problem();
        request.impurities = *impurities;
        rest = trimmed_blanks(rest.substr(0, at));
    }
    if (std::isalpha(static_cast<unsigned char>(rest.front()))) {
        const Result<Composition> composition = composition_from(catalogue, rest);
        if (!composition) return composition.problem();
        request.composition = *composition;
    } else {
        const Result<std::vector<Stock>> stocks = stocks_from(catalogue, rest);
        if (!stocks) return stocks.problem();
        request.stocks = *stocks;
    }
    return request;
}

Result<Catalogue> with_mixes(const Catalogue& catalogue, const std::vector<std::string>& words) {
    Catalogue out = catalogue;
    for (const std::string& w : words) {
        if (!names_mix(w)) continue;
        const Result<MixRequest> request = mix_request_from(catalogue, w);
        Result<Metal> metal = request ? estimated_metal(catalogue, *request, w) : Result<Metal>(request.problem());
        if (!metal) {
            Problem p = metal.problem();
            p.text = "'" + w + "': " + p.text;
            return p;
        }
        const auto by_slug = [](const Metal& a, const Metal& b) { return a.slug < b.slug; };
        const auto at = std::lower_bound(out.metals.begin(), out.metals.end(), *metal, by_slug);
        if (at == out.metals.end() || at->slug != w) out.metals.insert(at, std::move(*metal));
    }
    out.index();
    return out;
}

} // namespace pourbook

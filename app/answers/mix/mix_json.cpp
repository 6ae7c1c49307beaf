#include "answers/mix/mix_report.hpp"

#include "answers/parts/json_parts.hpp"

#include <cmath>

namespace pourbook {
namespace {

Json sources_of(const Estimate& e) {
    Json out = Json::array();
    for (const Citation& c : e.sources)
        out.push_back({{"key", c.source}, {"locator", c.locator}, {"how_known", name_of(c.how_known)}});
    return out;
}

Json estimate_of(const Estimate& e, const char* unit) {
    return {{"value", json_number(e.value_si)},
            {"unit", unit},
            {"standard_uncertainty", json_number(e.standard_uncertainty_si)},
            {"low90", json_number(e.low90_si)},
            {"high90", json_number(e.high90_si)},
            {"rule", e.rule},
            {"range", e.range},
            {"error", e.error},
            {"estimate", true},
            {"trail", e.trail},
            {"sources", sources_of(e)}};
}

Json missing(const Problem& problem) {
    return {{"value", nullptr}, {"reason", problem.text}};
}

Json estimate_or_reason(const Result<Estimate>& e, const char* unit) {
    return e ? estimate_of(*e, unit) : missing(e.problem());
}

Json shares_of(const Composition& c, bool atomic) {
    Json out = Json::object();
    for (const Share& s : c.shares()) out[s.element] = atomic ? s.at_percent : s.wt_percent;
    return out;
}

Json phases_of(const std::vector<PhaseShare>& phases, const std::string& b) {
    Json out = Json::array();
    for (const PhaseShare& p : phases)
        out.push_back({{"phase", p.phase}, {"share", p.share}, {b + "_wt_percent", p.wt}});
    return out;
}

void add_melting(Json& out, const MixResult& r) {
    if (!r.melting) {
        out["solidus_K"] = nullptr;
        out["liquidus_K"] = nullptr;
        out["melting"] = missing(r.melting.problem());
        return;
    }
    const MeltingEstimate& m = *r.melting;
    out["solidus_K"] = json_number(m.solidus.value_si);
    out["liquidus_K"] = json_number(m.liquidus.value_si);
    out["melting"] = {{"solidus", estimate_of(m.solidus, "K")},
                      {"liquidus", estimate_of(m.liquidus, "K")},
                      {"freezing_range_K", m.liquidus.value_si - m.solidus.value_si},
                      {"first_solid", m.first_solid}};
    if (m.diagram) out["melting"]["diagram"] = m.diagram->a + "-" + m.diagram->b;
    if (m.freezing)
        out["melting"]["without_diffusion"] = {{"last_liquid_K", json_number(m.freezing->last_K)},
                                               {"last_liquid_share", json_number(m.freezing->last_liquid_share)},
                                               {"first_solid_share", json_number(m.freezing->primary_share)}};
}

Json resistivity_of(const MixResult& r) {
    if (!r.resistivity) return missing(r.resistivity.problem());
    Json out = estimate_of(r.resistivity->estimate, "ohm.m");
    out["treatment"] = name_of(r.treatment);
    out["matrix"] = json_number(r.resistivity->matrix_si);
    if (!std::isnan(r.resistivity->parallel_si)) {
        out["parallel"] = r.resistivity->parallel_si;
        out["series"] = r.resistivity->series_si;
    }
    return out;
}

Json value_of(const MixResult& r, double kg) {
    if (!r.metal_value) return missing(r.metal_value.problem());
    return {{"value", json_number(r.metal_value->value_si * kg)},
            {"currency", "USD"},
            {"as_of", r.value_as_of},
            {"standard_uncertainty", json_number(r.metal_value->standard_uncertainty_si * kg)}};
}

Json impurities_of(const std::vector<ImpurityEffect>& list) {
    Json out = Json::array();
    for (const ImpurityEffect& i : list)
        out.push_back({{"element", i.element},
                       {"content_wt_percent", json_number(i.content_wt)},
                       {"low90_wt_percent", json_number(i.low90_wt)},
                       {"high90_wt_percent", json_number(i.high90_wt)},
                       {"most_dissolved_wt_percent", json_number(i.most_wt)},
                       {"possible", !(i.content_wt > i.most_wt)},
                       {"resistivity", json_number(i.resistivity_si)},
                       {"per_wt_percent", json_number(i.per_wt.value_si)},
                       {"sources", sources_of(i.per_wt)}});
    return out;
}

void add_blend(Json& out, const MixResult& r) {
    if (!r.blend) return;
    out["mass_kg"] = json_number(r.mass_kg);
    out["mass_in_kg"] = r.blend->mass_kg();
    out["elements_kg"] = Json::object();
    for (const ElementMass& e : r.blend->elements) out["elements_kg"][e.element] = e.kg();
    out["metal_value_total"] = value_of(r, r.mass_kg);
}

void add_addition(Json& out, const MixResult& r) {
    if (!r.addition) return;
    out["addition"] = {{"metal", r.target->with},
                       {"mass_kg", r.addition->mass_kg},
                       {"per_kg_of_start", !r.blend},
                       {"total_kg", r.addition->total_kg},
                       {"element", r.target->content.element},
                       {"target_wt_percent", r.target->content.wt_percent},
                       {"composition_wt_percent", shares_of(r.addition->result, false)}};
}

Json scrap_of(const std::vector<ScrapContent>& contents) {
    Json out = Json::array();
    for (const ScrapContent& c : contents)
        out.push_back({{"element", c.element}, {"low90_wt_percent", c.low_wt}, {"high90_wt_percent", c.high_wt}});
    return out;
}

Json losses_of(const std::vector<UnevenLoss>& losses) {
    Json out = Json::array();
    for (const UnevenLoss& l : losses)
        out.push_back({{"element", l.element},
                       {"low_kg", l.low_kg},
                       {"high_kg", l.high_kg},
                       {"wt_percent_if_all", json_number(l.wt_if_all)},
                       {"liquidus_if_all_K", json_number(l.liquidus_if_all_K)}});
    return out;
}

} // namespace

std::string json_of(const MixResult& r, const Catalogue& catalogue) {
    Json out = {{"estimate", true},
                {"composition_wt_percent", shares_of(r.composition, false)},
                {"composition_at_percent", shares_of(r.composition, true)},
                {"treatment", name_of(r.treatment)},
                {"density", r.density ? json_number(r.density->value_si) : Json(nullptr)},
                {"resistivity", resistivity_of(r)}};
    add_melting(out, r);
    out["metal_value"] = value_of(r, 1);
    out["density_estimate"] = estimate_or_reason(r.density, "kg/m3");
    out["linear_expansion"] = estimate_or_reason(r.linear_expansion, "1/K");
    out["temperature_coefficient"] = estimate_or_reason(r.temperature_coefficient, "1/K");
    out["thermal_conductivity"] = estimate_or_reason(r.thermal_conductivity, "W/(m.K)");
    out["fineness"] = r.precious.empty()
                          ? Json(nullptr)
                          : Json{{"element", r.precious}, {"per_mille", r.composition.fineness(r.precious)}};
    out["karat"] = r.composition.wt("Au") > 0 ? Json(r.composition.karat()) : Json(nullptr);
    add_blend(out, r);
    add_addition(out, r);
    if (r.phases) {
        out["phases_at_K"] = r.phases_at_K;
        out["phases"] = *r.phases ? phases_of(**r.phases, r.melting->diagram->b) : missing(r.phases->problem());
    }
    if (!r.impurities.empty()) out["impurities"] = impurities_of(r.impurities);
    if (!r.equivalents.empty()) out["equivalent_impurities"] = impurities_of(r.equivalents);
    if (!r.scrap_contents.empty()) out["scrap_contents"] = scrap_of(r.scrap_contents);
    if (!r.losses.empty()) out["losses"] = losses_of(r.losses);
    if (!r.hazards.empty()) out["hazards"] = r.hazards;
    out["sources"] = r.sources;
    out["data_version"] = catalogue.data_version;
    return json_text(out);
}

} // namespace pourbook

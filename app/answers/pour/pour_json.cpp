#include "answers/parts/json_parts.hpp"
#include "answers/pour/pour_report.hpp"
#include "core/quantity/constants.hpp"
#include "questions/pour/defects.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

using casting::Traced;

/// A number under its key; where there is none, null and the reason beside it.
void put(Json& out, const std::string& key, double x, const std::string& reason) {
    out[key] = json_number(x);
    if (!std::isfinite(x)) out[key + "_reason"] = reason.empty() ? "no value" : reason;
}

Json sources_of(const std::vector<SourceValue>& sources) {
    Json out = Json::array();
    for (const SourceValue& s : sources) {
        out.push_back(
            {{"key", s.key}, {"locator", s.locator}, {"printed", s.printed}, {"how_known", name_of(s.how_known)}});
        if (!s.through.empty()) out.back()["through"] = s.through;
    }
    return out;
}

Json traced_of(const Traced& t, const std::string& unit) {
    return {{"value", json_number(t.value_si)},
            {"unit", unit},
            {"standard_uncertainty", json_number(t.standard_uncertainty_si)},
            {"estimated", t.estimated},
            {"how_known", name_of(t.how_known)},
            {"how", t.how},
            {"sources", sources_of(t.sources)}};
}

Json cautions_of(const PourResult& r) {
    Json out = Json::array();
    for (const casting::Warning& w : r.cautions)
        out.push_back({{"text", w.text},
                       {"source", w.citation.source},
                       {"locator", w.citation.locator},
                       {"how_known", name_of(w.citation.how_known)}});
    for (const std::string& remark : r.remarks)
        out.push_back({{"text", remark}, {"source", nullptr}, {"locator", "this plan"}, {"how_known", "computed"}});
    return out;
}

Json dimension_of(const casting::DimensionPlan& d) {
    Json out = {{"name", d.name},
                {"finished_mm", d.finished_m * 1000},
                {"cast_mm", d.cast_m * 1000},
                {"pattern_mm", d.pattern_m * 1000},
                {"pattern_in", d.pattern_m / inch_m}};
    out["pattern_low_mm"] = json_number(d.low_m * 1000);
    out["pattern_high_mm"] = json_number(d.high_m * 1000);
    if (d.bore) out["pattern_if_core_holds_mm"] = json_number(d.held_m * 1000);
    out["pattern_if_held_mm"] = json_number(d.held_m * 1000);
    out["own_castings"] = d.own;
    put(out, "tolerance_total_mm", d.tolerance_width_m * 1000, "no cited tolerance for this size and process");
    return out;
}

Json pattern_of(const PourResult& r) {
    Json out = Json::object();
    const std::string reason = r.contraction ? "" : r.contraction.problem().text;
    const double scale = r.scale;
    put(out, "scale", scale, reason);
    out["mould_growth_low_percent"] = 100 * r.mould_growth.low;
    out["mould_growth_high_percent"] = 100 * r.mould_growth.high;
    put(out, "scale_allowance_low", 1 + r.allowance.low, r.allowance.from);
    put(out, "scale_allowance_high", 1 + r.allowance.high, r.allowance.from);
    put(out, "volume_m3", r.cast_volume_m3 * scale * scale * scale, reason);
    out["machining_stock_m"] = r.request.stock_m;
    out["tolerance_grade"] = r.tolerance.grade.empty() ? Json(nullptr) : Json("ISO 8062 " + r.tolerance.grade);
    if (r.tolerance.grade.empty()) out["tolerance_grade_reason"] = "no grade is cited for this process";
    out["pieces"] = Json::array();
    for (const casting::PiecePattern& piece : r.patterns) {
        Json dimensions = Json::array();
        for (const casting::DimensionPlan& d : piece.dimensions) dimensions.push_back(dimension_of(d));
        out["pieces"].push_back(
            {{"part", piece.words}, {"stock_approximate", piece.stock_approximate}, {"dimensions", dimensions}});
    }
    return out;
}

Json cylinder_of(const casting::Cylinder& c) {
    return {{"diameter_m", c.diameter_m},
            {"height_m", c.height_m},
            {"volume_m3", c.volume_m3()},
            {"modulus_m", json_number(c.modulus_m())}};
}

/// Every figure the freezing time rests on, for a second model.
Json reckoned_with(const casting::FreezingCase& c) {
    const casting::MetalHeat& m = c.metal;
    return {{"density_kg_m3", m.density_kg_m3},
            {"solid_specific_heat_J_kg_K", m.solid_J_kg_K},
            {"melt_specific_heat_J_kg_K", m.melt_J_kg_K},
            {"fusion_J_kg", m.fusion_J_kg},
            {"solid_conductivity_W_m_K", m.solid_W_m_K},
            {"melt_conductivity_W_m_K", m.melt_W_m_K},
            {"solidus_K", m.solidus_K},
            {"liquidus_K", m.liquidus_K},
            {"pour_K", c.pour_K},
            {"mould_K", c.mould_K},
            {"mould_conductivity_W_m_K", c.mould.conductivity_W_m_K},
            {"mould_density_kg_m3", c.mould.density_kg_m3},
            {"mould_specific_heat_J_kg_K", c.mould.specific_heat_J_kg_K},
            {"contact_W_m2_K", json_number(std::isfinite(c.contact_W_m2_K) ? c.contact_W_m2_K : no_number)},
            {"emissivity", c.outside.emissivity},
            {"convection_W_m2_K", c.outside.convection_W_m2_K}};
}

void add_freezing(Json& out, const PourResult& r) {
    const std::string reason = r.freezing ? "" : r.freezing.problem().text;
    const casting::FreezingPlan none;
    const casting::FreezingPlan& f = r.freezing ? *r.freezing : none;
    put(out, "freezing_time_s", f.time_s.value_si, reason);
    put(out, "freezing_time_low90_s", f.low_s, reason);
    put(out, "freezing_time_high90_s", f.high_s, reason);
    put(out, "freezing_time_slab_of_modulus_s", f.of_slab_s, reason);
    put(out, "superheat_gone_s", f.superheat_gone_s, reason);
    put(out, "black_heat_K", f.black_K, reason);
    put(out, "black_heat_s", f.black_s, reason);
    put(out, "thinnest_wall_freezing_s", r.thinnest_s, reason);
    put(out, "chvorinov_time_s", f.chvorinov_s, "no thick mould, or no cited mould data");
    put(out, "chvorinov_constant_s_m2", f.chvorinov_s_m2, "no thick mould, or no cited mould data");
    put(out, "mould_wall_m", f.wall_m, reason);
    if (r.freezing) out["freezing_reckoned_with"] = reckoned_with(f.reckoned);
    out["freezing_sources"] = sources_of(f.sources);
}

Json feeder_of(const PourResult& r) {
    const casting::FeedingPlan& f = r.feeding;
    Json out = {{"freezes_last", r.freezes_last},
                {"modulus_m", r.heaviest.modulus_m()},
                {"mould_kind", r.freezing ? Json(r.freezing->mould_kind) : Json(nullptr)},
                {"too_thin_to_feed", f.too_thin},
                {"count", f.too_thin ? 0 : f.feeders}};
    put(out, "diameter_m", f.feeder ? f.feeder->chosen().diameter_m : no_number,
        f.feeder ? "" : f.feeder.problem().text);
    put(out, "height_m", f.feeder ? f.feeder->chosen().height_m : no_number, f.feeder ? "" : f.feeder.problem().text);
    out["mass_kg"] = r.feeder_kg;
    if (f.feeder) {
        out["governed_by"] = f.feeder->modulus_governs ? "modulus" : "feed demand";
        out["by_modulus"] = cylinder_of(f.feeder->by_modulus);
        out["by_feed_demand"] = cylinder_of(f.feeder->by_demand);
        out["shrinkage_volume_m3"] = f.feeder->shrinkage_volume_m3;
    }
    if (f.sleeved) out["in_a_sleeve"] = cylinder_of(f.sleeved->chosen());
    if (f.feeder) out["neck_m"] = f.feeder->neck_m;
    put(out, "feeder_freezing_time_s", f.feeder_freezing_s, "no feeder, or no freezing time");
    put(out, "feeding_distance_m", f.distance_m, "no rule");
    put(out, "end_effect_m", f.end_effect_m, "no rule");
    put(out, "gate_spacing_m", f.gate_spacing_m, "the wall can be fed");
    put(out, "hole_without_feeder_m3", f.hole_m3, "the contraction is not known");
    add_freezing(out, r);
    out["melt_contraction_percent"] = 100 * f.melt_contraction;
    put(out, "solidification_contraction_percent", 100 * f.solidification, "nothing cited");
    out["share"] = traced_of(f.share, "1");
    out["notes"] = f.notes;
    out["sources"] = sources_of(f.sources);
    return out;
}

Json losses_of(const PourResult& r) {
    Json out = Json::array();
    for (const casting::ElementLoss& e : r.element_losses)
        out.push_back({{"element", e.element},
                       {"low_kg", e.low_kg},
                       {"high_kg", e.high_kg},
                       {"text", e.text},
                       {"source", e.source.key},
                       {"how_known", name_of(e.source.how_known)}});
    return out;
}

Json charge_of(const PourResult& r) {
    const casting::Charge& c = r.charge;
    return {{"poured_kg", c.poured_kg},
            {"lost_kg", c.lost_kg},
            {"returns_kg", c.returns_kg},
            {"heel_kg", r.request.heel_kg},
            {"yield", c.yield},
            {"usual_yield_low", json_number(r.usual_yield.low_si)},
            {"usual_yield_high", json_number(r.usual_yield.high_si)},
            {"by_yield", c.by_yield},
            {"castings", r.request.count},
            {"heats", r.heats},
            {"melt_volume_m3", r.melt_volume_m3},
            {"melt_loss", traced_of(r.melt_loss, "1")},
            {"element_losses", losses_of(r)},
            {"gating_share", traced_of(r.gating, "1")}};
}

void add_contraction(Json& out, const PourResult& r) {
    const bool known = static_cast<bool>(r.contraction);
    const std::string reason = known ? "" : r.contraction.problem().text;
    put(out, "linear_contraction_percent", known ? 100 * r.contraction->strain.value_si : no_number, reason);
    put(out, "linear_contraction_standard_uncertainty_percent",
        known ? 100 * r.contraction->strain.standard_uncertainty_si : no_number, reason);
    put(out, "contraction_allowance_percent_low", 100 * r.allowance.low, r.allowance.from);
    put(out, "contraction_allowance_percent_high", 100 * r.allowance.high, r.allowance.from);
    if (known)
        out["contraction"] = {{"solidus_K", r.contraction->solidus_K},
                              {"cited_up_to_K", r.contraction->cited_up_to_K},
                              {"extended", r.contraction->extended},
                              {"last_mean_percent", 100 * r.contraction->last_mean_strain},
                              {"strain", traced_of(r.contraction->strain, "1")}};
    out["contraction_allowance"] = {
        {"from", r.allowance.from}, {"sources", sources_of(r.allowance.sources)}, {"notes", r.allowance.notes}};
}

Json window_of(const PourResult& r) {
    const casting::PourHeat& h = r.heat;
    Json out = {{"least_K", json_number(h.least_K)}, {"least_why", h.least_why}};
    put(out, "most_K", h.most_K, "nothing known limits it");
    out["most_why"] = h.most_why;
    put(out, "zinc_pressure_atm", h.zinc_atm, "no zinc in copper");
    out["printed"] = Json::array();
    for (const casting::PrintedRange& p : h.printed)
        out["printed"].push_back(
            {{"low_K", p.low_K}, {"high_K", p.high_K}, {"section", p.section}, {"source", p.source.key}});
    return out;
}

Json mould_of(const PourResult& r) {
    Json out = Json::object();
    put(out, "temperature_K", r.mould_K, r.mould.how);
    out["printed_low_K"] = json_number(r.mould.range.low_si);
    out["printed_high_K"] = json_number(r.mould.range.high_si);
    out["how"] = r.mould.how;
    out["by_rule"] = r.mould.by_rule;
    if (r.carry) {
        out["carry_s"] = r.carry->seconds;
        out["carry_mean_K"] = r.carry->mould_K;
    }
    out["sources"] = sources_of(r.mould.range.sources);
    return out;
}

void add_heat(Json& out, const PourResult& r) {
    const std::string reason = r.melt_heat ? "" : r.melt_heat.problem().text;
    put(out, "melt_energy_J", r.melt_energy_J, reason);
    put(out, "melt_energy_standard_uncertainty_J", r.melt_energy_uncertainty_J, reason);
    if (!r.melt_heat) return;
    out["melt_heat_J_kg"] = {{"total", r.melt_heat->total_J_kg},
                             {"estimated", r.melt_heat->estimated},
                             {"solid", traced_of(r.melt_heat->solid, "J/kg")},
                             {"fusion", traced_of(r.melt_heat->fusion, "J/kg")},
                             {"melt", traced_of(r.melt_heat->melt, "J/kg")}};
    const casting::Firing& t = r.firing;
    out["firing"] = {{"efficiency_low", json_number(t.efficiency_low)},
                     {"efficiency_high", json_number(t.efficiency_high)},
                     {"time_low_s", json_number(t.seconds_low)},
                     {"time_high_s", json_number(t.seconds_high)},
                     {"propane_low_kg", json_number(t.propane_kg_low)},
                     {"propane_high_kg", json_number(t.propane_kg_high)},
                     {"propane_next_heat_low_kg", json_number(t.again_kg_low)},
                     {"propane_next_heat_high_kg", json_number(t.again_kg_high)},
                     {"burner_low_s", json_number(std::min(t.burner_s_low, t.burner_s_high))},
                     {"burner_high_s", json_number(std::max(t.burner_s_low, t.burner_s_high))},
                     {"sources", sources_of(t.sources)}};
    if (!r.request.power_W) out["firing"]["time_reason"] = "no power stated";
}

Json cost_of(const PourResult& r) {
    const PourMoney& m = r.money;
    Json out = Json::object();
    put(out, "value", m.value, m.price ? "" : m.price.problem().text);
    out["currency"] = "USD";
    out["as_of"] = m.as_of.empty() ? Json(nullptr) : Json(m.as_of);
    out["low90"] = json_number(m.low);
    out["high90"] = json_number(m.high);
    out["returns_value"] = json_number(m.returns_value);
    if (m.price) out["price"] = traced_of(*m.price, "USD/kg");
    return out;
}

Json notes_of(const std::vector<const Practice*>& entries) {
    Json out = Json::array();
    for (const Practice* p : entries)
        out.push_back({{"text", p->quantity == "defect" ? defect_from(*p).seen + ": " + p->grade : p->text},
                       {"source", p->citation.source},
                       {"locator", p->citation.locator},
                       {"how_known", name_of(p->citation.how_known)}});
    return out;
}

/// What the person's own file brought in.
Json own_of(const PourResult& r) {
    Json out = {{"trials", r.request.own_trials ? "on" : "off"},
                {"stock", r.request.own_stock ? "on" : "off"},
                {"castings", r.request.own_trials ? r.request.own.castings : 0}};
    if (const auto& y = r.own_yield)
        out["yield"] = {
            {"mean", y->mean}, {"castings", y->castings}, {"planned_kg", y->planned_kg}, {"taken", y->taken}};
    if (const auto& s = r.shelf)
        out["shelf"] = {{"kg", s->kg}, {"need_kg", s->need_kg}, {"short_kg", s->short_kg()}, {"lots", s->lots}};
    return out;
}

void add_part(Json& out, const PourResult& r) {
    out["part_volume_m3"] = r.part_volume_m3;
    out["part_surface_m2"] = r.part_surface_m2;
    out["part_mass_kg"] = r.part_mass_kg;
    out["cast_volume_m3"] = r.cast_volume_m3;
    out["cast_mass_kg"] = r.cast_mass_kg;
    out["charge_mass_kg"] = r.charge.charge_kg;
    out["charge"] = charge_of(r);
    out["own"] = own_of(r);
}

Json fill_of(const PourFill& f) {
    Json out = {{"thinnest_section_m", f.wall_m}, {"thinnest_section_estimated", f.wall_estimated}};
    put(out, "least_section_low_m", f.least_section.low_si, "nothing cited for this process");
    put(out, "least_section_high_m", f.least_section.high_si, "nothing cited for this process");
    const casting::GatingPlan& g = f.gating;
    put(out, "sprue_speed_m_s", g.foot_speed_m_s, "no figure");
    put(out, "fill_time_s", g.fill_s, "no figure");
    put(out, "fill_time_common_s", g.rule_s, "no figure");
    put(out, "fill_time_most_s", g.most_s, "the freezing time is not known");
    out["sprue_stated"] = g.stated;
    out["sprue_height_m"] = g.head_m;
    put(out, "choke_area_m2", g.choke_m2, "no figure");
    put(out, "sprue_foot_m", g.foot_m, "no figure");
    put(out, "sprue_top_m", g.top_m, "no figure");
    put(out, "gate_area_m2", g.gates_m2, "no figure");
    put(out, "gate_speed_m_s", g.gate_speed_m_s, "no figure");
    out["gates"] = g.gates;
    put(out, "vent_area_m2", g.vents_m2, "no figure");
    out["least_head_m"] = g.least_head_m;
    put(out, "gating_metal_m3", g.metal_m3, "no figure");
    put(out, "head_of_surface_tension_m", g.capillary_m, "no surface tension for this metal");
    out["warnings"] = g.warnings;
    return out;
}

void add_notes(Json& out, const PourResult& r) {
    for (const auto& [key, entries] : {std::pair{"deoxidation", &r.deoxidation},
                                       {"after_the_pour", &r.after},
                                       {"gas_risks", &r.gas},
                                       {"shell_schedule", &r.shell_steps},
                                       {"burnout", &r.burnout},
                                       {"draft", &r.draft},
                                       {"checklist", &r.checklist},
                                       {"defect_key", &r.defects}})
        out[key] = notes_of(*entries);
}

Json references_of(const PourResult& r, const Catalogue& catalogue) {
    Json out = Json::array();
    for (const std::string& key : source_keys(r))
        if (const Reference* reference = catalogue.reference(key))
            out.push_back({{"key", key}, {"full", reference->full()}, {"kind", reference->kind}});
    return out;
}

} // namespace

std::string json_of(const PourResult& r, const Catalogue& catalogue) {
    Json out = {{"metal", r.metal->slug}, {"process", r.request.process}, {"cautions", cautions_of(r)}};
    add_part(out, r);
    out["pattern"] = pattern_of(r);
    add_contraction(out, r);
    out["pour_temperature_K"] = r.heat.pour.value_si;
    out["superheat_K"] = r.heat.superheat_K;
    out["section"] = r.heat.section;
    out["pour"] = traced_of(r.heat.pour, "K");
    out["pour_window"] = window_of(r);
    out["mould"] = mould_of(r);
    add_heat(out, r);
    out["cost"] = cost_of(r);
    out["feeder"] = feeder_of(r);
    out["fill"] = fill_of(r.fill);
    out["density"] = traced_of(r.density, "kg/m3");
    out["melt_density"] = traced_of(r.melt_density, "kg/m3");
    add_notes(out, r);
    out["consumables"] = {{"filament_low_kg", json_number(r.consumables.filament_kg.low_si)},
                          {"filament_high_kg", json_number(r.consumables.filament_kg.high_si)},
                          {"shell_kg", json_number(r.consumables.shell_kg.low_si)},
                          {"kiln_low_J", json_number(r.consumables.kiln_J.low_si)},
                          {"kiln_high_J", json_number(r.consumables.kiln_J.high_si)},
                          {"cost_low_usd", r.consumables.cost_low_usd},
                          {"cost_high_usd", r.consumables.cost_high_usd}};
    out["sprue_load"] = {{"mass_kg", json_number(r.sprue_load.mass_kg)},
                         {"stress_Pa", json_number(r.sprue_load.stress_Pa)},
                         {"bears_Pa", json_number(r.sprue_load.bears_Pa)}};
    out["sources"] = references_of(r, catalogue);
    out["data_version"] = catalogue.data_version;
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace pourbook

#include "answers/drop/eddy_json.hpp"

#include "answers/parts/json_parts.hpp"
#include "questions/say/casting_words.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace pourbook {
namespace {

Json uncertain(const eddy::Uncertain& u) {
    return {{"value", json_number(u.value)}, {"standard_uncertainty", json_number(u.standard())}};
}

Json magnet_of(const DropSetup& setup) {
    const eddy::DropInputs& i = setup.inputs;
    static constexpr const char* shapes[] = {"sphere", "cylinder", "ring", "cube"};
    Json out = {{"shape", shapes[static_cast<int>(i.shape)]}, {"outer_radius_m", uncertain(i.outer_radius_m)}};
    if (i.shape == eddy::Shape::ring) out["inner_radius_m"] = uncertain(i.inner_radius_m);
    if (i.shape != eddy::Shape::sphere) out["length_m"] = uncertain(i.length_m);
    if (i.stack.pieces > 1) {
        out["pieces"] = i.stack.pieces;
        out["arrangement"] = i.stack.alternating ? "opposed" : "parallel";
        out["gap_m"] = i.stack.gap_m;
    }
    out["grade"] = setup.grade.empty() ? Json(nullptr) : Json(setup.grade);
    out["remanence_T"] = uncertain(i.remanence_T);
    out["recoil_permeability"] = i.recoil_permeability;
    out["temperature_K"] = setup.magnet_temperature_K;
    return out;
}

Json tube_of(const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions) {
    const eddy::DropInputs& i = setup.inputs;
    return {{"bore_radius_m", uncertain(i.bore_radius_m)},
            {"outside_radius_m", uncertain(i.outside_radius_m)},
            {"length_m", uncertain(i.tube_length_m)},
            {"metal", tube.metal ? Json(tube.metal->slug) : Json(nullptr)},
            {"conductivity_S_m", json_number(tube.conductivity_S_m())},
            {"conductivity_relative_uncertainty", json_number(tube.log_uncertainty())},
            {"temperature_K", conditions.temperature_K},
            {"condition", tube.metal ? Json(tube.value.condition) : Json(nullptr)}};
}

Json sources_of(const DropSetup& setup, const TubeMetal& tube) {
    Json out = Json::array();
    for (const CitedFigure& f : setup.sources)
        out.push_back({{"what", f.what},
                       {"key", f.citation.source},
                       {"locator", f.citation.locator},
                       {"how_known", name_of(f.citation.how_known)}});
    if (tube.metal)
        for (const SourceValue& s : tube.value.sources)
            if (s.chosen)
                out.push_back({{"what", "resistivity of " + tube.metal->slug + ": " + s.printed},
                               {"key", s.key},
                               {"locator", s.locator},
                               {"how_known", name_of(s.how_known)}});
    return out;
}

void add_setup(Json& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions,
               const Catalogue& catalogue) {
    out["magnet"] = magnet_of(setup);
    out["tube"] = tube_of(setup, tube, conditions);
    const bool casting = tube.metal && of_casting(conditions);
    out["state"] = casting ? Json(casting_words(*conditions.casting)) : tube.metal ? Json("handbook") : Json(nullptr);
    Json notes = setup.assumptions;
    for (const std::string& note : tube.notes) notes.push_back(note);
    out["assumptions"] = notes;
    out["sources"] = sources_of(setup, tube);
    out["cautions"] = Json::array();
    for (const MagnetFigure* c : magnet_cautions(catalogue)) out["cautions"].push_back(c->text);
    out["data_version"] = catalogue.data_version;
}

} // namespace

std::string json_of(const DropResult& r, const Catalogue& catalogue) {
    Json out = {{"terminal_speed_m_s", r.settles ? json_number(r.fall.terminal_speed_m_s) : Json(nullptr)},
                {"fall_time_s", json_number(r.fall.time_s)},
                {"fall_time_low90_s", json_number(r.fall_time_low90_s)},
                {"fall_time_high90_s", json_number(r.fall_time_high90_s)},
                {"drag_coefficient_N_s_m", json_number(r.coefficient_N_s_m)},
                {"peak_drag_N", json_number(r.peak_drag_N)},
                {"peak_drag_speed_m_s", json_number(r.peak_drag_speed_m_s)},
                {"drag_relative_to_whole_tube", json_number(r.path_factor)},
                {"moment_A_m2", json_number(r.moment_A_m2)},
                {"regime", r.regime},
                {"unstable_speed_m_s", json_number(r.fall.unstable_speed_m_s)},
                {"terminal_speed_low90_m_s", json_number(r.speed_low90_m_s)},
                {"terminal_speed_high90_m_s", json_number(r.speed_high90_m_s)},
                {"exit_speed_m_s", json_number(r.fall.exit_speed_m_s)},
                {"time_constant_s", json_number(r.time_constant_s)},
                {"long_tube_speed_m_s", json_number(r.fall.terminal_speed_m_s)},
                {"settles", r.settles},
                {"currents_fade_s", json_number(r.fading_s)},
                {"currents_followed", r.fall.currents_s.has_value()},
                {"currents_add_s", json_number(r.fall.currents_s)},
                {"turns_back", r.fall.turns_back},
                {"fall_time_across_s", json_number(r.fall_time_across_s)},
                {"timing", r.setup.timing},
                {"warnings", r.cautions},
                {"free_fall_time_s", json_number(r.free_fall_time_s)},
                {"effective_length_m", json_number(r.effective_length_m)},
                {"magnet_mass_kg", json_number(r.magnet_mass_kg)},
                {"tube_mass_kg", json_number(r.tube_mass_kg)},
                {"tube_metal_cost_usd", json_number(r.cost_usd)},
                {"heat_J", json_number(r.fall.heat_J)},
                {"wall_warming_K", json_number(r.warming_K)},
                {"felt_extra_weight_N", json_number(r.felt_N)},
                {"left_out", r.left_out}};
    add_setup(out, r.setup, r.tube, r.conditions, catalogue);
    return json_text(out);
}

std::string json_of(const DragResult& r, const Catalogue& catalogue) {
    Json out = {{"drag_N", json_number(r.drag_N)},
                {"drag_low90_N", json_number(r.drag_low90_N)},
                {"drag_high90_N", json_number(r.drag_high90_N)},
                {"speed_m_s", json_number(r.speed_m_s)},
                {"linear_drag_N", json_number(r.linear_drag_N)},
                {"peak_drag_N", json_number(r.peak_drag_N)},
                {"peak_drag_speed_m_s", json_number(r.peak_drag_speed_m_s)},
                {"skin_depth_m", json_number(r.skin_depth_m)}};
    add_setup(out, r.setup, r.tube, r.conditions, catalogue);
    return json_text(out);
}

} // namespace pourbook

#include "answers/ask/short_answer.hpp"
#include "answers/drop/drop_documents.hpp"
#include "answers/drop/setup_document.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/drop_figures.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string peak_text(double force_N, double speed_m_s, UnitSystem units) {
    if (!std::isfinite(force_N)) return "not known with slits, off the axis or in a wall of several parts";
    return force_text(force_N, units) + " at " + speed_text(speed_m_s, units);
}

std::string terminal_text(const DropResult& r, UnitSystem units) {
    if (!r.fall.terminal_speed_m_s)
        return "none: the weight, " + force_text(r.magnet_mass_kg * eddy::standard_gravity_m_s2, units) +
               ", is more than the peak drag";
    const std::string speed = speed_text(*r.fall.terminal_speed_m_s, units);
    if (const eddy::WallProfile* wall = r.model->wall(); wall && !wall->even())
        return "in a long tube " + speed + " as at the upper end, " +
               speed_text(*r.fall.terminal_speed_m_s / wall->lower_end(), units) + " as at the lower end";
    if (!r.settles) return "not reached; in a long tube " + speed;
    std::string out = speed;
    if (std::isfinite(r.speed_low90_m_s))
        out += "  (" + interval_text(speed_text(r.speed_low90_m_s, units), speed_text(r.speed_high90_m_s, units)) + ")";
    constexpr double thrown_at_most_m_s = 1000;
    if (r.fall.unstable_speed_m_s && *r.fall.unstable_speed_m_s < thrown_at_most_m_s)
        out += "; thrown in faster than " + speed_text(*r.fall.unstable_speed_m_s, units) + " it would run away";
    return out;
}

std::string tube_words(const DropResult& r, const DocumentSetting& setting) {
    std::string out;
    if (std::isfinite(r.tube_mass_kg)) out += mass_text(r.tube_mass_kg, setting.units) + "; ";
    if (std::isfinite(r.cost_usd))
        out += "its metal costs " + shown_money(setting.catalogue, r.cost_usd, 3, setting.units) +
               at_rate(setting.catalogue) + "; ";
    return out + (r.settles ? "the open ends take " +
                                  length_text(r.model->nominal().tube_length_m - r.effective_length_m, setting.units) +
                                  " from its length"
                            : "it brakes like " + length_text(r.effective_length_m, setting.units) + " of a long one");
}

void add_fall(Document& out, const DropResult& r, UnitSystem units) {
    const eddy::Fall& f = r.fall;
    out.pair("fall time",
             seconds_text(f.time_s) + "  (" +
                 interval_text(seconds_text(r.fall_time_low90_s), seconds_text(r.fall_time_high90_s)) +
                 "; without a tube " + seconds_text(r.free_fall_time_s) + ")",
             "fall_time_s", number_or_null(f.time_s))
        .sources = drop_sources(r);
    out.parts.back().rows.back().back().deciding = drop_sources(r).size();
    out.tell("fall_time_low90_s", number_or_null(r.fall_time_low90_s));
    out.tell("fall_time_high90_s", number_or_null(r.fall_time_high90_s));
    out.tell("free_fall_time_s", number_or_null(r.free_fall_time_s));
    if (std::isfinite(r.fall_time_across_s))
        out.pair("poles across", seconds_text(r.fall_time_across_s) + " (the same ball, turned)");
    out.tell("fall_time_across_s", number_or_null(r.fall_time_across_s));
    out.pair("timing", for_reader(units, r.setup.timing), "timing", r.setup.timing);
    out.tell("exit_speed_m_s", number_or_null(f.exit_speed_m_s));
    out.tell("currents_fade_s", number_or_null(r.fading_s));
    out.tell("currents_followed", f.currents_s.has_value());
    out.tell("currents_add_s", number_or_null(f.currents_s));
    out.tell("turns_back", f.turns_back);
    const bool followed = f.currents_s.has_value();
    out.pair("worked out", followed ? "with the wall's currents followed in time, as rings"
                                    : "by the steady law of a long tube, its ends as rings that are missing");
    out.tell("solver", followed ? "currents_in_time" : "steady_law");
}

void add_speeds(Document& out, const DropResult& r, UnitSystem units) {
    const eddy::Fall& f = r.fall;
    out.pair("terminal speed", terminal_text(r, units), "terminal_speed_m_s",
             r.settles ? number_or_null(f.terminal_speed_m_s) : Value());
    out.tell("terminal_speed_low90_m_s", number_or_null(r.speed_low90_m_s));
    out.tell("terminal_speed_high90_m_s", number_or_null(r.speed_high90_m_s));
    out.tell("long_tube_speed_m_s", number_or_null(f.terminal_speed_m_s));
    out.tell("unstable_speed_m_s", number_or_null(f.unstable_speed_m_s));
    out.tell("settles", r.settles);
    out.pair("drag coefficient",
             damping_text(r.coefficient_N_s_m, units) + ", time constant " + seconds_text(r.time_constant_s) +
                 (r.fading_s > r.time_constant_s ? "; the wall's currents fade in " + seconds_text(r.fading_s) +
                                                       ", so that it swings before it settles"
                                                 : ""),
             "drag_coefficient_N_s_m", number_or_null(r.coefficient_N_s_m));
    out.tell("time_constant_s", number_or_null(r.time_constant_s));
    out.pair("peak drag", peak_text(r.peak_drag_N, r.peak_drag_speed_m_s, units), "peak_drag_N",
             number_or_null(r.peak_drag_N));
    out.tell("peak_drag_speed_m_s", number_or_null(r.peak_drag_speed_m_s));
    if (r.path_factor != 1)
        out.pair("slits, off axis", significant(r.path_factor, 4) + " times the drag of the whole tube on its axis");
    out.tell("drag_relative_to_whole_tube", number_or_null(r.path_factor));
    out.pair("regime", r.regime, "regime", r.regime);
}

void add_bodies(Document& out, const DropResult& r, const DocumentSetting& setting) {
    const UnitSystem units = setting.units;
    out.pair("magnet", mass_text(r.magnet_mass_kg, units) + ", moment " + significant(r.moment_A_m2, 4) + " A·m²",
             "magnet_mass_kg", number_or_null(r.magnet_mass_kg));
    out.tell("moment_A_m2", number_or_null(r.moment_A_m2));
    out.pair("tube", tube_words(r, setting), "tube_mass_kg", number_or_null(r.tube_mass_kg));
    out.tell("tube_metal_cost_usd", number_or_null(r.cost_usd));
    out.tell("effective_length_m", number_or_null(r.effective_length_m));
    out.pair("in the hand",
             "the tube weighs " + force_text(r.felt_N, units) +
                 (r.settles ? " more while the magnet falls evenly" : " more at most"),
             "felt_extra_weight_N", number_or_null(r.felt_N));
    out.pair("heat in the wall",
             significant(r.fall.heat_J, 3) + " J" +
                 (std::isfinite(r.warming_K) ? ", warming it by " + difference_text(r.warming_K, units) : ""),
             "heat_J", number_or_null(r.fall.heat_J));
    out.tell("wall_warming_K", number_or_null(r.warming_K));
}

void add_pieces(Document& out, const DropResult& r, UnitSystem units) {
    std::vector<std::string> said;
    for (const WallPiece& p : r.pieces) {
        const std::string text = piece_text(p, r.conditions, units);
        out.pair(p.what, text);
        said.push_back(p.what + ": " + piece_text(p, r.conditions, UnitSystem::shown));
    }
    out.tell("tube.parts", said);
}

/// What the same magnet and tube do at a stated speed.
void add_drag(Document& out, const DragResult& r, UnitSystem units) {
    out.pair("drag",
             force_text(r.drag_N, units, 5) + " at " + speed_text(r.speed_m_s, units) + "  (" +
                 interval_text(force_text(r.drag_low90_N, units), force_text(r.drag_high90_N, units)) + ")",
             "drag_N", number_or_null(r.drag_N));
    out.tell("drag_low90_N", number_or_null(r.drag_low90_N));
    out.tell("drag_high90_N", number_or_null(r.drag_high90_N));
    out.tell("speed_m_s", number_or_null(r.speed_m_s));
    out.pair("linear law", force_text(r.linear_drag_N, units) + ", without the induced currents' own field",
             "linear_drag_N", number_or_null(r.linear_drag_N));
    out.pair("peak drag", peak_text(r.peak_drag_N, r.peak_drag_speed_m_s, units), "peak_drag_N",
             number_or_null(r.peak_drag_N));
    out.tell("peak_drag_speed_m_s", number_or_null(r.peak_drag_speed_m_s));
    if (std::isfinite(r.skin_depth_m))
        out.pair("skin depth", length_text(r.skin_depth_m, units) + " for what a ring of the wall sees");
    out.tell("skin_depth_m", number_or_null(r.skin_depth_m));
}

std::string through(const TubeMetal& tube) {
    return tube.metal ? tube.metal->name : std::string("a stated conductivity");
}

} // namespace

Document document_of(const DropResult& r, const DocumentSetting& setting) {
    Document out = start_document("A magnet falls through " + through(r.tube), setting);
    out.say(sentence_of(r), in::file);
    add_setup(out, r.setup, r.tube, r.conditions, setting.units);
    add_pieces(out, r, setting.units);
    out.add_pairs("Fall");
    add_fall(out, r, setting.units);
    add_speeds(out, r, setting.units);
    add_bodies(out, r, setting);
    out.tell("warnings", r.cautions);
    out.tell("left_out", r.left_out);
    tell_setup(out, r.setup, r.tube, r.conditions, setting.catalogue);
    add_list(out, "Beware", r.cautions, setting.units);
    add_list(out, "Left out", r.left_out, setting.units);
    add_grounds(out, r.setup, &r.tube, setting);
    end_with_version(out);
    return out;
}

Document document_of(const DragResult& r, const DocumentSetting& setting) {
    Document out = start_document("Drag on a magnet in " + through(r.tube), setting);
    add_setup(out, r.setup, r.tube, r.conditions, setting.units);
    out.add_pairs("Drag");
    add_drag(out, r, setting.units);
    if (Sentence* s = out.say("The tube is taken as infinitely long and the magnet as coaxial.", in::text | in::file))
        s->apart = true;
    tell_setup(out, r.setup, r.tube, r.conditions, setting.catalogue);
    add_grounds(out, r.setup, &r.tube, setting);
    end_with_version(out);
    return out;
}

} // namespace pourbook

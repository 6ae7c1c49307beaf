#include "answers/drop/drop_documents.hpp"
#include "answers/drop/setup_document.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// For people each figure with its unit, for programs and files in SI.
DataTable drag_and_lift(const PlateResult& r, UnitSystem units) {
    constexpr unsigned people = in::text | in::window, others = in::program | in::file;
    DataTable t{"Drag and lift", {}, {}, in::all, "points"};
    for (const char* title : {"speed", "drag", "90 % interval", "lift"})
        t.columns.push_back({title, title, "", std::string(title) != "90 % interval", false, people});
    for (const auto& [id, title, unit] : {std::tuple{"speed_m_s", "speed", "m/s"},
                                          {"drag_N", "drag", "N"},
                                          {"drag_low90_N", "drag, 90 % low", "N"},
                                          {"drag_high90_N", "drag, 90 % high", "N"},
                                          {"lift_N", "lift", "N"}})
        t.columns.push_back({id, title, unit, true, false, others});
    t.columns.push_back({"ratio", "drag/lift", "", true, false, people | in::file});
    const auto force = [&](double newtons) { return force_text(newtons, units); };
    for (const PlatePoint& p : r.points) {
        auto& row = t.rows.emplace_back();
        for (const std::string& words : {speed_text(p.speed_m_s, units), force(p.drag_N),
                                         force(p.drag_low90_N) + " to " + force(p.drag_high90_N), force(p.lift_N)})
            row.push_back(DataCell::words(words));
        for (const double x : {p.speed_m_s, p.drag_N, p.drag_low90_N, p.drag_high90_N, p.lift_N}) {
            row.push_back(DataCell::figure(x, significant(x, 3)));
            row.back().value = number_or_null(x);
        }
        row.push_back(DataCell::words(significant(p.drag_N / p.lift_N, 3)));
    }
    return t;
}

void tell_motion(Document& out, const PlateMotion& m) {
    const std::string key = m.kind == "slide" ? "speed" : m.kind == "swing" ? "swings_to_half" : "time";
    const std::string unit = m.kind == "slide" ? "_m_s" : m.kind == "swing" ? "" : "_s";
    out.tell("motion.kind", m.kind);
    out.tell("motion.reason", m.none.empty() ? Value() : Value(m.none));
    out.tell("motion." + key + unit, number_or_null(m.value));
    out.tell("motion." + key + "_low90" + unit, number_or_null(m.low90));
    out.tell("motion." + key + "_high90" + unit, number_or_null(m.high90));
    if (m.kind == "swing") {
        out.tell("motion.period_s", number_or_null(m.period_s));
        out.tell("motion.rest_s", number_or_null(m.rest_s));
    }
    if (m.kind == "fall") {
        out.tell("motion.free_fall_s", number_or_null(m.free_fall_s));
        out.tell("motion.touch_speed_m_s", number_or_null(m.touch_m_s));
    }
}

std::string motion_text(const PlateMotion& m, UnitSystem units) {
    const auto seconds = [](double s) { return significant(s, 3) + " s"; };
    if (m.kind == "slide" && m.none.empty())
        return "slides evenly at " + speed_text(m.value, units) + " (" +
               interval_text(speed_text(m.low90, units), speed_text(m.high90, units)) + ")";
    if (m.kind == "swing") {
        const std::string swings = "its amplitude is half after " + significant(m.value, 3) + " swings of " +
                                   seconds(m.period_s) + " (" +
                                   interval_text(significant(m.low90, 3), significant(m.high90, 3)) + ")";
        const std::string rest = std::isfinite(m.rest_s) ? ", at rest after " + seconds(m.rest_s) : "";
        return (m.none.empty() ? swings : m.none) + rest;
    }
    if (m.kind == "fall")
        return "lies on the block after " + seconds(m.value) + " (" +
               interval_text(seconds(m.low90), seconds(m.high90)) + "; free fall " + seconds(m.free_fall_s) +
               "), touching at " + speed_text(m.touch_m_s, units);
    return m.none;
}

void tell_plate(Document& out, const PlateResult& r) {
    out.tell("peak_drag_N", number_or_null(r.peak_drag_N));
    out.tell("peak_drag_speed_m_s", number_or_null(r.peak_drag_speed_m_s));
    out.tell("recession_speed_m_s", number_or_null(r.recession_speed_m_s));
    out.tell("moment_A_m2", number_or_null(r.moment_A_m2));
    out.tell("magnet_mass_kg", number_or_null(r.magnet_mass_kg));
    out.tell("height_m", r.height_m);
    out.tell("thickness_m", r.thickness_m);
    out.tell("axis", r.standing ? "normal" : "along");
    out.tell("conductivity_S_m", number_or_null(r.plate.conductivity_S_m()));
    out.tell("temperature_K", r.conditions.temperature_K);
    out.tell("left_out", r.left_out);
    out.tell("assumptions", r.setup.assumptions);
    if (r.motion) tell_motion(out, *r.motion);
}

} // namespace

Document document_of(const PlateResult& r, const DocumentSetting& setting) {
    const UnitSystem units = setting.units;
    Document out = start_document("A magnet past a plate", setting);
    tell_plate(out, r);
    out.add_pairs("Set-up");
    out.pair("magnet", magnet_text(r.setup, units) + (r.standing ? ", standing" : ", lying along the motion") +
                           ", centre " + length_text(r.height_m, units) + " above the plate");
    out.pair("plate", length_text(r.thickness_m, units) + ", " + metal_text(r.plate, r.conditions, units));
    if (r.motion) out.pair("motion", motion_text(*r.motion, units));
    out.parts.push_back(drag_and_lift(r, units));
    out.add_pairs("Forces");
    if (!r.points.empty())
        out.pair("most drag", force_text(r.peak_drag_N, units) + " at " + speed_text(r.peak_drag_speed_m_s, units) +
                                  "; over a thin plate drag over lift is " + speed_text(r.recession_speed_m_s, units) +
                                  " over the speed");
    out.pair("weight", force_text(r.magnet_mass_kg * eddy::standard_gravity_m_s2, units));
    add_list(out, "Left out", r.left_out, units);
    tell_sources(out, r.setup, r.plate, setting.catalogue);
    add_grounds(out, r.setup, &r.plate, setting);
    end_with_version(out);
    return out;
}

} // namespace pourbook

#include "answers/drop/plate_report.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

Table table_of(const PlateResult& r, UnitSystem units) {
    Table t{{{"speed", true}, {"drag", true}, {"90 % interval"}, {"lift", true}, {"drag/lift", true}}, {}};
    for (const PlatePoint& p : r.points)
        t.rows.push_back({speed_text(p.speed_m_s, units), newtons(p.drag_N),
                          newtons(p.drag_low90_N) + " to " + newtons(p.drag_high90_N), newtons(p.lift_N),
                          significant(p.drag_N / p.lift_N, 3)});
    return t;
}

Json json_of_motion(const PlateMotion& m) {
    Json out = {{"kind", m.kind}, {"reason", m.none.empty() ? Json(nullptr) : Json(m.none)}};
    const std::string key = m.kind == "slide" ? "speed" : m.kind == "swing" ? "swings_to_half" : "time";
    const std::string unit = m.kind == "slide" ? "_m_s" : m.kind == "swing" ? "" : "_s";
    out[key + unit] = json_number(m.value);
    out[key + "_low90" + unit] = json_number(m.low90);
    out[key + "_high90" + unit] = json_number(m.high90);
    if (m.kind == "swing") {
        out["period_s"] = json_number(m.period_s);
        out["rest_s"] = json_number(m.rest_s);
    }
    if (m.kind == "fall") {
        out["free_fall_s"] = json_number(m.free_fall_s);
        out["touch_speed_m_s"] = json_number(m.touch_m_s);
    }
    return out;
}

std::string drag_text(const PlateResult& r, UnitSystem units) {
    return "\nmost drag  " + newtons(r.peak_drag_N) + " at " + speed_text(r.peak_drag_speed_m_s, units) +
           "; over a thin plate drag over lift is " + speed_text(r.recession_speed_m_s, units) + " over the speed\n";
}

std::string motion_text(const PlateMotion& m, UnitSystem units) {
    const auto seconds = [](double s) { return significant(s, 3) + " s"; };
    if (m.kind == "slide" && m.none.empty())
        return "slides evenly at " + speed_text(m.value, units) + " (90 %: " + speed_text(m.low90, units) + " to " +
               speed_text(m.high90, units) + ")";
    if (m.kind == "swing") {
        const std::string swings = "its amplitude is half after " + significant(m.value, 3) + " swings of " +
                                   seconds(m.period_s) + " (90 %: " + significant(m.low90, 3) + " to " +
                                   significant(m.high90, 3) + ")";
        const std::string rest = std::isfinite(m.rest_s) ? ", at rest after " + seconds(m.rest_s) : "";
        return (m.none.empty() ? swings : m.none) + rest;
    }
    if (m.kind == "fall")
        return "lies on the block after " + seconds(m.value) + " (90 %: " + seconds(m.low90) + " to " +
               seconds(m.high90) + "; free fall " + seconds(m.free_fall_s) + "), touching at " +
               speed_text(m.touch_m_s, units);
    return m.none;
}

} // namespace

std::string json_of(const PlateResult& r, const Catalogue& catalogue) {
    Json points = Json::array();
    for (const PlatePoint& p : r.points)
        points.push_back({{"speed_m_s", p.speed_m_s},
                          {"drag_N", json_number(p.drag_N)},
                          {"drag_low90_N", json_number(p.drag_low90_N)},
                          {"drag_high90_N", json_number(p.drag_high90_N)},
                          {"lift_N", json_number(p.lift_N)}});
    Json sources = Json::array();
    for (const CitedFigure& f : r.setup.sources) sources.push_back({{"what", f.what}, {"key", f.citation.source}});
    for (const SourceValue& s : r.plate.value.sources)
        if (s.chosen) sources.push_back({{"what", "resistivity: " + s.printed}, {"key", s.key}});
    Json out = {{"points", points},
                {"peak_drag_N", json_number(r.peak_drag_N)},
                {"peak_drag_speed_m_s", json_number(r.peak_drag_speed_m_s)},
                {"recession_speed_m_s", json_number(r.recession_speed_m_s)},
                {"moment_A_m2", json_number(r.moment_A_m2)},
                {"magnet_mass_kg", json_number(r.magnet_mass_kg)},
                {"height_m", r.height_m},
                {"thickness_m", r.thickness_m},
                {"axis", r.standing ? "normal" : "along"},
                {"conductivity_S_m", json_number(r.plate.conductivity_S_m())},
                {"temperature_K", r.conditions.temperature_K},
                {"left_out", r.left_out},
                {"assumptions", r.setup.assumptions},
                {"sources", sources},
                {"data_version", catalogue.data_version}};
    if (r.motion) out["motion"] = json_of_motion(*r.motion);
    return json_text(out);
}

std::string text_of(const PlateResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    out << "magnet  " << magnet_text(r.setup, units) << (r.standing ? ", standing" : ", lying along the motion")
        << ", centre " << length_text(r.height_m, units) << " above the plate\n"
        << "plate   " << length_text(r.thickness_m, units) << ", " << metal_text(r.plate, r.conditions, units) << "\n\n"
        << (r.motion ? wrapped("motion  " + motion_text(*r.motion, units), page_width, "        ") + "\n" : "")
        << (r.points.empty() ? "" : as_text(table_of(r, units)) + drag_text(r, units)) << "weight     "
        << newtons(r.magnet_mass_kg * eddy::standard_gravity_m_s2) << "\n\nLeft out\n";
    for (const std::string& what : r.left_out) out << wrapped("  " + what, page_width, "      ");
    write_grounds(out, r.setup, &r.plate, catalogue);
    out << "\nData version " << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook

#include "answers/drop/plate_report.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

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
    return json_text({{"points", points},
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
                      {"data_version", catalogue.data_version}});
}

std::string text_of(const PlateResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    out << "magnet  " << magnet_text(r.setup, units) << (r.standing ? ", standing" : ", lying along the motion")
        << ", centre " << length_text(r.height_m, units) << " above the plate\n"
        << "plate   " << length_text(r.thickness_m, units) << ", " << metal_text(r.plate, r.conditions, units) << "\n\n"
        << as_text(table_of(r, units)) << "\nmost drag  " << newtons(r.peak_drag_N) << " at "
        << speed_text(r.peak_drag_speed_m_s, units) << "; over a thin plate drag over lift is "
        << speed_text(r.recession_speed_m_s, units) << " over the speed\nweight     "
        << newtons(r.magnet_mass_kg * eddy::standard_gravity_m_s2) << "\n\nLeft out\n";
    for (const std::string& what : r.left_out) out << wrapped("  " + what, page_width, "      ");
    write_grounds(out, r.setup, &r.plate, catalogue);
    out << "\nData version " << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook

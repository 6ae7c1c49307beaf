#include "answers/drop/measure_report.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

Json magnet_json(const MagnetMeasured& m) {
    Json readings = Json::array();
    for (std::size_t i = 0; i < m.readings.size(); ++i)
        readings.push_back({{"distance_m", m.readings[i].distance_m},
                            {"field_T", m.readings[i].field_T},
                            {"residual_T", m.fit.residuals_T[i]},
                            {"residual_over_uncertainty", m.fit.in_doubts[i]}});
    return {{"remanence_T", m.remanence_T},
            {"standard_uncertainty_T", m.standard_uncertainty_T},
            {"moment_A_m2", m.moment_A_m2},
            {"moment_standard_uncertainty_A_m2", m.moment_uncertainty_A_m2},
            {"density_kg_m3", json_number(m.density_kg_m3)},
            {"widened", m.fit.widened},
            {"sensor_depth_m", m.depth_m ? Json(*m.depth_m) : Json(nullptr)},
            {"sensor_depth_standard_uncertainty_m", m.depth_doubt_m ? Json(*m.depth_doubt_m) : Json(nullptr)},
            {"remanence_at_case_T", m.remanence_at_case_T ? Json(*m.remanence_at_case_T) : Json(nullptr)},
            {"readings", readings},
            {"use_as", m.words},
            {"notes", m.notes}};
}

Json tube_json(const TubeMeasured& t) {
    return {{"resistance_ohm", t.resistance_ohm},
            {"conductivity_S_m", t.conductivity.value_S_m},
            {"standard_uncertainty_S_m", t.conductivity.standard_uncertainty_S_m},
            {"low90_S_m", t.conductivity.low90_S_m},
            {"high90_S_m", t.conductivity.high90_S_m},
            {"iacs_percent", t.iacs_percent},
            {"thermal_voltage_V", json_number(t.thermal_voltage_V)},
            {"use_as", t.words},
            {"notes", t.notes}};
}

void write_magnet(std::ostream& out, const MagnetMeasured& m, UnitSystem units) {
    out << "Magnet\n  remanence  " << rounded_to(m.remanence_T, m.standard_uncertainty_T) << " T, standard uncertainty "
        << significant(m.standard_uncertainty_T, 2) << " T\n  moment     "
        << rounded_to(m.moment_A_m2, m.moment_uncertainty_A_m2) << " A·m², standard uncertainty "
        << significant(m.moment_uncertainty_A_m2, 2) << " A·m²\n";
    if (std::isfinite(m.density_kg_m3))
        out << "  density    " << significant(m.density_kg_m3 / 1000, 3) << " g/cm³ from its mass\n";
    Table t{{{"distance", true}, {"field", true}, {"less the fit", true}, {"over its uncertainty", true}}, {}};
    for (std::size_t i = 0; i < m.readings.size(); ++i)
        t.rows.push_back({length_text(m.readings[i].distance_m, units),
                          significant(m.readings[i].field_T * 1000, 4) + " mT",
                          significant(m.fit.residuals_T[i] * 1000, 2) + " mT", significant(m.fit.in_doubts[i], 2)});
    out << as_text(t) << "  use as     " << m.words << "\n";
    for (const std::string& note : m.notes) out << wrapped("  " + note, page_width, "      ");
}

void write_tube(std::ostream& out, const TubeMeasured& t) {
    const eddy::Conductivity& c = t.conductivity;
    out << "Tube\n  resistance    " << significant(t.resistance_ohm * 1000, 4) << " mΩ between the taps\n"
        << "  conductivity  " << rounded_to(c.value_S_m / 1e6, c.standard_uncertainty_S_m / 1e6)
        << " MS/m, standard uncertainty " << significant(c.standard_uncertainty_S_m / 1e6, 2) << " MS/m ("
        << significant(t.iacs_percent, 3) << " %IACS)\n";
    if (std::isfinite(t.thermal_voltage_V))
        out << "  thermal voltage cancelled: " << significant(t.thermal_voltage_V * 1e6, 2) << " µV\n";
    out << "  use as        " << t.words << "\n";
    for (const std::string& note : t.notes) out << wrapped("  " + note, page_width, "      ");
}

} // namespace

std::string json_of(const MeasureResult& r) {
    if (r.blank()) return json_text({{"sheet", measuring_sheet()}});
    Json out;
    out["magnet"] = r.magnet ? magnet_json(*r.magnet) : Json(nullptr);
    out["tube"] = r.tube ? tube_json(*r.tube) : Json(nullptr);
    return json_text(out);
}

std::string text_of(const MeasureResult& r, UnitSystem units) {
    std::ostringstream out;
    if (r.blank())
        for (const std::string& line : measuring_sheet()) out << line << "\n";
    if (r.magnet) write_magnet(out, *r.magnet, units);
    if (r.magnet && r.tube) out << "\n";
    if (r.tube) write_tube(out, *r.tube);
    return out.str();
}

} // namespace pourbook

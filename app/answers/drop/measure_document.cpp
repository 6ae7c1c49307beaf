#include "answers/drop/drop_documents.hpp"
#include "answers/drop/setup_document.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

DataTable field_readings(const MagnetMeasured& m, UnitSystem units) {
    DataTable t{"Readings",
                {{"distance_m", "distance", "", true},
                 {"field_T", "field", "", true},
                 {"residual_T", "less the fit", "", true},
                 {"residual_over_uncertainty", "over its uncertainty", "", true}},
                {},
                in::all,
                "magnet.readings"};
    for (std::size_t i = 0; i < m.readings.size(); ++i) {
        const double field_T = m.readings[i].field_T, residual_T = m.fit.residuals_T[i], doubts = m.fit.in_doubts[i];
        t.rows.push_back({DataCell::both(length_text(m.readings[i].distance_m, units), m.readings[i].distance_m),
                          DataCell::both(significant(field_T * 1000, 4) + " mT", field_T),
                          DataCell::both(significant(residual_T * 1000, 2) + " mT", residual_T),
                          DataCell::both(significant(doubts, 2), doubts)});
    }
    return t;
}

void add_magnet(Document& out, const MagnetMeasured& m, UnitSystem units) {
    out.add_pairs("Magnet");
    out.pair("remanence",
             rounded_to(m.remanence_T, m.standard_uncertainty_T) + " T, standard uncertainty " +
                 significant(m.standard_uncertainty_T, 2) + " T",
             "magnet.remanence_T", m.remanence_T);
    out.tell("magnet.standard_uncertainty_T", m.standard_uncertainty_T);
    out.pair("moment",
             rounded_to(m.moment_A_m2, m.moment_uncertainty_A_m2) + " A·m², standard uncertainty " +
                 significant(m.moment_uncertainty_A_m2, 2) + " A·m²",
             "magnet.moment_A_m2", m.moment_A_m2);
    out.tell("magnet.moment_standard_uncertainty_A_m2", m.moment_uncertainty_A_m2);
    if (std::isfinite(m.density_kg_m3)) out.pair("density", density_text(m.density_kg_m3, units, 3) + " from its mass");
    out.tell("magnet.density_kg_m3", number_or_null(m.density_kg_m3));
    out.pair("magnet: use as", m.words, "magnet.use_as", m.words);
    out.tell("magnet.widened", m.fit.widened);
    out.tell("magnet.sensor_depth_m", number_or_null(m.depth_m));
    out.tell("magnet.sensor_depth_standard_uncertainty_m", number_or_null(m.depth_doubt_m));
    out.tell("magnet.remanence_at_case_T", number_or_null(m.remanence_at_case_T));
    out.tell("magnet.notes", m.notes);
    out.parts.push_back(field_readings(m, units));
    add_list(out, "To know of the magnet", m.notes, units);
}

void add_tube(Document& out, const TubeMeasured& t, UnitSystem units) {
    const eddy::Conductivity& c = t.conductivity;
    out.add_pairs("Tube");
    out.pair("resistance", significant(t.resistance_ohm * 1000, 4) + " mΩ between the taps", "tube.resistance_ohm",
             t.resistance_ohm);
    out.pair("conductivity",
             rounded_to(c.value_S_m / 1e6, c.standard_uncertainty_S_m / 1e6) + " MS/m, standard uncertainty " +
                 significant(c.standard_uncertainty_S_m / 1e6, 2) + " MS/m (" + significant(t.iacs_percent, 3) +
                 " %IACS)",
             "tube.conductivity_S_m", c.value_S_m);
    out.tell("tube.standard_uncertainty_S_m", c.standard_uncertainty_S_m);
    out.tell("tube.low90_S_m", c.low90_S_m);
    out.tell("tube.high90_S_m", c.high90_S_m);
    out.tell("tube.iacs_percent", t.iacs_percent);
    if (std::isfinite(t.thermal_voltage_V))
        out.pair("thermal voltage", significant(t.thermal_voltage_V * 1e6, 2) + " µV, cancelled");
    out.tell("tube.thermal_voltage_V", number_or_null(t.thermal_voltage_V));
    out.pair("tube: use as", t.words, "tube.use_as", t.words);
    out.tell("tube.notes", t.notes);
    add_list(out, "To know of the tube", t.notes, units);
}

} // namespace

Document document_of(const MeasureResult& r, const DocumentSetting& setting) {
    Document out = start_document("What was measured", setting);
    if (r.blank()) {
        out.tell("sheet", measuring_sheet());
        out.add_lines("To measure", measuring_sheet(), in::text | in::file);
        out.parts.back().look = TableLook::sheet;
        return out;
    }
    if (!r.magnet) out.tell("magnet", {});
    if (!r.tube) out.tell("tube", {});
    if (r.magnet) add_magnet(out, *r.magnet, setting.units);
    if (r.tube) add_tube(out, *r.tube, setting.units);
    return out;
}

} // namespace pourbook

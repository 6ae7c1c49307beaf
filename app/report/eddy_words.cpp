#include "report/eddy_words.hpp"

#include "core/quantity/format.hpp"
#include "report/table.hpp"

#include <set>

namespace pourbook {
namespace {

constexpr double inch_m = 0.0254;
constexpr double ounce_kg = 0.45359237 / 16;
constexpr double iacs_S_m = 58e6; // 100 %IACS (IEC 60028)

void write_line(std::ostream& out, const std::string& text) {
    out << wrapped("  " + text, eddy_page_width, "      ");
}

} // namespace

std::string length_text(double m, UnitSystem units) {
    return units == UnitSystem::workshop ? trimmed(m / inch_m, 4) + " in" : trimmed(m * 1000, 5) + " mm";
}

std::string speed_text(double v, UnitSystem units) {
    if (units == UnitSystem::workshop) return significant(v / inch_m, 3) + " in/s";
    return v < 1 ? significant(v * 1000, 3) + " mm/s" : significant(v, 3) + " m/s";
}

std::string mass_text(double kg, UnitSystem units) {
    if (units == UnitSystem::workshop) return significant(kg / ounce_kg, 3) + " oz";
    return kg < 1 ? significant(kg * 1000, 3) + " g" : significant(kg, 3) + " kg";
}

std::string temperature_words(double kelvin, UnitSystem units) {
    return units == UnitSystem::workshop ? trimmed(kelvin * 1.8 - 459.67, 5) + " °F" : trimmed(kelvin, 6) + " K";
}

std::string magnet_text(const DropSetup& setup, UnitSystem units) {
    const eddy::DropInputs& i = setup.inputs;
    const std::string outer = length_text(2 * i.outer_radius_m.value, units);
    std::string out = "sphere " + outer;
    if (i.shape == eddy::Shape::cylinder) out = "cylinder " + outer + " x " + length_text(i.length_m.value, units);
    if (i.shape == eddy::Shape::ring)
        out = "ring " + outer + " x " + length_text(2 * i.inner_radius_m.value, units) + " x " +
              length_text(i.length_m.value, units);
    if (!setup.grade.empty()) out += ", " + setup.grade;
    return out + ", " + rounded_to(i.remanence_T.value, i.remanence_T.standard(), 4) + " T at " +
           temperature_words(setup.magnet_temperature_K, units);
}

std::string tube_text(const eddy::DropInputs& i, UnitSystem units) {
    return "bore " + length_text(2 * i.bore_radius_m.value, units) + ", outside " +
           length_text(2 * i.outside_radius_m.value, units) + ", length " + length_text(i.tube_length_m.value, units);
}

std::string metal_text(const TubeMetal& tube, const Conditions& conditions, UnitSystem units) {
    const std::string rho = significant(tube.resistivity_si * 1e8, 4) + " µΩ·cm (" +
                            significant(tube.conductivity_S_m() / iacs_S_m * 100, 3) + " %IACS)";
    if (!tube.metal) return "resistivity " + rho;
    return tube.metal->name + ", " + tube.value.condition + ", " + rho + " at " +
           temperature_words(conditions.temperature_K, units);
}

void write_grounds(std::ostream& out, const DropSetup& setup, const TubeMetal* tube, const Catalogue& catalogue) {
    std::vector<std::string> notes = setup.assumptions;
    if (tube) {
        notes.insert(notes.end(), tube->notes.begin(), tube->notes.end());
        if (tube->metal) notes.insert(notes.end(), tube->value.trail.begin(), tube->value.trail.end());
    }
    if (!notes.empty()) out << "\nAssumed and taken\n";
    for (const std::string& note : notes) write_line(out, note);
    std::set<std::string> keys;
    out << "\nSources\n";
    for (const CitedFigure& f : setup.sources) {
        const std::string how =
            f.citation.how_known == HowKnown::read ? "" : std::string(", ") + name_of(f.citation.how_known);
        write_line(out, f.what + " [" + f.citation.source + ", " + f.citation.locator + how + "]");
        keys.insert(f.citation.source);
    }
    if (tube && tube->metal)
        for (const SourceValue& s : tube->value.sources)
            if (s.chosen) keys.insert(s.key);
    for (const std::string& key : keys)
        if (const Reference* r = catalogue.reference(key)) write_line(out, "[" + key + "] " + r->full());
    const auto cautions = magnet_cautions(catalogue);
    if (!cautions.empty()) out << "\nStrong magnets\n";
    for (const MagnetFigure* c : cautions) write_line(out, c->text + " [" + c->citation.source + "]");
}

} // namespace pourbook

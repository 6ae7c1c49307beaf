#include "answers/pour/sheet_units.hpp"

#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/amounts.hpp"
#include "questions/say/in_units_of.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {

std::string SheetUnits::temperature(double kelvin) const {
    return furnace_temperature(kelvin, units);
}

std::string SheetUnits::difference(double kelvin) const {
    return workshop() ? trimmed(std::round(kelvin * 1.8), 3) + " °F" : trimmed(std::round(kelvin), 3) + " K";
}

std::string SheetUnits::mass(double kg) const {
    return mass_of(kg, kg);
}

std::string SheetUnits::mass_of(double kg, double all_kg) const {
    const NamedUnit unit = metal_mass_unit_for(workshop() ? all_kg : kg, precious, units);
    return significant(kg / unit.si, 4) + " " + unit.name;
}

std::string SheetUnits::length(double metres) const {
    return workshop() ? length_text(metres, units, 3) : trimmed(metres * 1000, 3) + " mm";
}

std::string SheetUnits::volume(double m3) const {
    return volume_text(m3, units);
}

std::string SheetUnits::about_volume(double m3) const {
    const NamedUnit unit = volume_unit(units);
    const double own = m3 / unit.si, step = std::pow(10, std::floor(std::log10(own)) - 1);
    return trimmed(std::ceil(own / step) * step, 6) + " " + unit.name;
}

std::string SheetUnits::drawn_size(double metres) const {
    const double step = workshop() ? 0.001 : 0.01;
    return trimmed(std::round(metres / length_unit(units).si / step) * step, 7);
}

std::string SheetUnits::pattern_size(double metres) const {
    const double own = metres / length_unit(units).si;
    const int ahead = static_cast<int>(std::floor(std::log10(own))) + 1, behind = workshop() ? 3 : 2;
    return significant(own, std::max(1, ahead + behind));
}

std::string shown_plus_minus(double share) {
    return "+- " + significant(100 * share, 2) + " %";
}

std::string shown_scale(double times) {
    return significant(times, times < 1 ? 4 : 5);
}

std::string shown_between(double low_share, double high_share) {
    const std::string low = shown_percent(low_share), high = shown_percent(high_share);
    return low == high ? low : low + " to " + high;
}

std::string shown_percent(double share) {
    return trimmed(100 * share, 3) + " %";
}

std::string shown_seconds(double s) {
    return s < 180 ? significant(s, 2) + " s" : significant(s / 60, 2) + " min";
}

std::string shown_range(const casting::Range& range, double factor, int figures) {
    const std::string low = trimmed(range.low_si * factor, figures);
    const std::string high = trimmed(range.high_si * factor, figures);
    return low == high ? low : low + " to " + high;
}

std::string shown_mark(const casting::Traced& t) {
    std::string out;
    if (t.estimated) out += " (estimated)";
    if (t.how_known == HowKnown::memory) out += " (from memory)";
    if (t.how_known == HowKnown::common_practice) out += " (common practice)";
    return out;
}

std::string shown_keys(const std::vector<SourceValue>& sources) {
    std::string out;
    for (const SourceValue& s : sources)
        if (out.find(s.key) == std::string::npos) out += (out.empty() ? "[" : ", ") + s.key;
    return out.empty() ? out : out + "]";
}

std::string shown_grounds(const casting::Traced& t, UnitSystem units) {
    std::string out =
        in_units_of(units, t.how) + "\nhow known: " + how_known_text(t.how_known) + (t.estimated ? ", estimated" : "");
    if (!t.sources.empty()) out += "\n\nSources";
    for (const SourceValue& s : t.sources)
        out += "\n" + s.key + ", " + s.locator + ": " + s.printed + " (" + how_known_text(s.how_known) + ")";
    return out;
}

} // namespace pourbook

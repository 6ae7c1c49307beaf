#include "answers/pour/sheet_units.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double sheet_pound_kg = 0.45359237;
constexpr double sheet_troy_ounce_kg = 31.1034768e-3;

} // namespace

std::string SheetUnits::temperature(double kelvin) const {
    if (workshop) return trimmed(std::round(kelvin * 1.8 - 459.67), 4) + " degF";
    return trimmed(std::round(kelvin - 273.15), 4) + " degC";
}

std::string SheetUnits::difference(double kelvin) const {
    return workshop ? trimmed(std::round(kelvin * 1.8), 3) + " degF" : trimmed(std::round(kelvin), 3) + " K";
}

std::string SheetUnits::mass(double kg) const {
    if (!workshop) return kg < 1 ? significant(kg * 1000, 4) + " g" : significant(kg, 4) + " kg";
    return precious ? significant(kg / sheet_troy_ounce_kg, 4) + " ozt" : significant(kg / sheet_pound_kg, 4) + " lb";
}

std::string SheetUnits::mass_range(double low_kg, double high_kg) const {
    const bool large = high_kg >= 1;
    const double factor = !workshop ? (large ? 1 : 1000) : precious ? 1 / sheet_troy_ounce_kg : 1 / sheet_pound_kg;
    return significant(low_kg * factor, 2) + " to " + significant(high_kg * factor, 2) +
           (!workshop  ? (large ? " kg" : " g")
            : precious ? " ozt"
                       : " lb");
}

std::string SheetUnits::length(double metres) const {
    return workshop ? significant(metres / inch_m, 3) + " in" : significant(metres * 1000, 3) + " mm";
}

std::string SheetUnits::volume(double m3) const {
    return workshop ? significant(m3 / (inch_m * inch_m * inch_m), 4) + " in3" : significant(m3 * 1e6, 4) + " cm3";
}

std::string SheetUnits::about_volume(double m3) const {
    const double own = m3 * (workshop ? 1 / (inch_m * inch_m * inch_m) : 1e6);
    const double step = std::pow(10, std::floor(std::log10(own)) - 1);
    return trimmed(std::ceil(own / step) * step, 6) + (workshop ? " in3" : " cm3");
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

std::string shown_grounds(const casting::Traced& t) {
    std::string out = t.how + "\nhow known: " + how_known_text(t.how_known) + (t.estimated ? ", estimated" : "");
    if (!t.sources.empty()) out += "\n\nSources";
    for (const SourceValue& s : t.sources)
        out += "\n" + s.key + ", " + s.locator + ": " + s.printed + " (" + how_known_text(s.how_known) + ")";
    return out;
}

} // namespace pourbook

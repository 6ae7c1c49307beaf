#include "questions/say/shown.hpp"

#include "core/quantity/constants.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <array>
#include <cmath>
#include <unordered_map>
#include <utility>

namespace pourbook {
namespace {

/// Of money in another currency: "EUR/kg = 1.08 USD/kg" (shown_money.hpp).
constexpr const char* worth = " = ";

const std::string& unit_text(const Property& p, UnitSystem system) {
    return system == UnitSystem::base ? p.si_unit : system == UnitSystem::workshop ? p.workshop_unit : p.shown_unit;
}

/// Each is read once: a table shows hundreds of figures in every frame.
const Unit& unit_of(const Property& p, UnitSystem system) {
    thread_local std::unordered_map<std::string, Unit> known;
    const std::string& text = unit_text(p, system);
    const auto [at, fresh] = known.try_emplace(text);
    if (!fresh || text.empty() || text == "1") return at->second;
    const std::size_t value = text.find(worth);
    const Result<Unit> unit =
        parse_unit(value == std::string::npos ? text : text.substr(value + std::string(worth).size()));
    if (unit) at->second = *unit;
    return at->second;
}

bool reciprocal(const Property& p, const Unit& unit) {
    return !(unit.dimension == p.dimension);
}

} // namespace

std::string shown_unit(const Property& property, UnitSystem system) {
    static constexpr std::array<std::pair<const char*, const char*>, 9> spelled = {{{"uohm.cm", "µΩ·cm"},
                                                                                    {"degC", "°C"},
                                                                                    {"degF", "°F"},
                                                                                    {"W/(m.K)", "W/(m·K)"},
                                                                                    {"J/(kg.K)", "J/(kg·K)"},
                                                                                    {"g/cm3", "g/cm³"},
                                                                                    {"lb/in3", "lb/in³"},
                                                                                    {"1e-6/K", "10⁻⁶/K"},
                                                                                    {"1", ""}}};
    const std::string& whole = unit_text(property, system);
    const std::string text = whole.substr(0, whole.find(worth));
    for (const auto& [plain, pretty] : spelled)
        if (text == plain) return pretty;
    return text;
}

double shown_number(const Property& property, double si, UnitSystem system) {
    const Unit& unit = unit_of(property, system);
    return unit.from_si(reciprocal(property, unit) ? 1 / si : si);
}

double shown_uncertainty(const Property& property, double si, double uncertainty_si, UnitSystem system) {
    const Unit& unit = unit_of(property, system);
    const double u = reciprocal(property, unit) ? uncertainty_si / (si * si) : uncertainty_si;
    return u / unit.scale;
}

std::string shown_value(const Property& property, const Evaluated& value, UnitSystem system) {
    if (property.is_text) return value.text;
    const double number = shown_number(property, value.value_si, system);
    const double u = shown_uncertainty(property, value.value_si, value.standard_uncertainty_si, system);
    return u == 0 ? significant(number, 6) : rounded_to(number, normal_90 * u); // nothing to round a fixed point by
}

std::string shown_full(const Property& property, const Evaluated& value, UnitSystem system) {
    if (property.is_text) return value.text;
    const double u = shown_uncertainty(property, value.value_si, value.standard_uncertainty_si, system);
    const bool exact = u == 0; // a fixed point
    const std::string text =
        shown_value(property, value, system) + (exact ? "" : " ± " + significant(normal_90 * u, 2));
    const std::string unit = shown_unit(property, system);
    return text + (unit.empty() ? "" : " " + unit) + (exact ? ", exact" : "");
}

std::string shown_with_level(const Property& property, const Evaluated& value, UnitSystem system) {
    const bool interval = !property.is_text && value.standard_uncertainty_si != 0;
    return shown_full(property, value, system) + (interval ? " (90 %)" : "");
}

std::string how_known_text(HowKnown how) {
    return how == HowKnown::memory ? "remembered" : name_of(how);
}

} // namespace pourbook
